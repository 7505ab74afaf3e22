// A zip file without compression: photos are compressed already. Names are plain ASCII.
const CRC = (() => {
  const table = new Uint32Array(256);
  for (let one = 0; one < 256; one += 1) {
    let value = one;
    for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
    table[one] = value >>> 0;
  }
  return table;
})();

function checksum(bytes) {
  let value = 0xffffffff;
  for (const byte of bytes) value = CRC[(value ^ byte) & 0xff] ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}

function heading(signature, fields) {
  const sizes = fields.reduce((sum, [size]) => sum + size, 4);
  const view = new DataView(new ArrayBuffer(sizes));
  view.setUint32(0, signature, true);
  let at = 4;
  for (const [size, value] of fields) {
    if (size === 2) view.setUint16(at, value, true);
    else view.setUint32(at, value, true);
    at += size;
  }
  return new Uint8Array(view.buffer);
}

// files: a list of [name, Uint8Array]; the zip as a Blob.
function zip(files, now = new Date()) {
  const time = (now.getHours() << 11) | (now.getMinutes() << 5) | (now.getSeconds() >> 1);
  const day = ((now.getFullYear() - 1980) << 9) | ((now.getMonth() + 1) << 5) | now.getDate();
  const parts = [];
  const index = [];
  let at = 0;
  for (const [name, bytes] of files) {
    const path = new TextEncoder().encode(name);
    const common = [[2, 20], [2, 0], [2, 0], [2, time], [2, day], [4, checksum(bytes)], [4, bytes.length],
      [4, bytes.length], [2, path.length], [2, 0]];
    const local = heading(0x04034b50, common);
    parts.push(local, path, bytes);
    index.push(heading(0x02014b50, [[2, 20], ...common, [2, 0], [2, 0], [2, 0], [4, 0], [4, at]]), path);
    at += local.length + path.length + bytes.length;
  }
  const size = index.reduce((sum, part) => sum + part.length, 0);
  const end = heading(0x06054b50, [[2, 0], [2, 0], [2, files.length], [2, files.length], [4, size], [4, at], [2, 0]]);
  return new Blob([...parts, ...index, end], { type: "application/zip" });
}
