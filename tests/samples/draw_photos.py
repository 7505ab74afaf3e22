"""Draw the invented photos of samples/oil_that_looked_milky anew; each says on itself that it is invented.

Run: python tests/samples/draw_photos.py
"""

from __future__ import annotations

import math
import random
from pathlib import Path

from PIL import Image, ImageDraw, ImageFilter, ImageFont

FOLDER = Path(__file__).resolve().parents[2] / "samples" / "oil_that_looked_milky"
SIZE = (640, 480)
WORDS = "INVENTED PICTURE, drawn by a program"


def ground(top: tuple[int, int, int], bottom: tuple[int, int, int]) -> Image.Image:
    """A plain ground that gets darker downwards, with the grain of a small sensor."""
    image = Image.new("RGB", SIZE)
    draw, grain = ImageDraw.Draw(image), random.Random(7)
    for y in range(SIZE[1]):
        share = y / SIZE[1]
        shade = [round(a + (b - a) * share) + grain.randint(-2, 2) for a, b in zip(top, bottom, strict=True)]
        draw.line([(0, y), (SIZE[0], y)], fill=(shade[0], shade[1], shade[2]))
    return image


def finished(image: Image.Image, name: str, soft: float = 1.2) -> None:
    """Soften a little, write on it that it is invented, and save it small."""
    image = image.filter(ImageFilter.GaussianBlur(soft))
    draw = ImageDraw.Draw(image)
    draw.rectangle([0, SIZE[1] - 30, SIZE[0], SIZE[1]], fill="white")
    draw.text((10, SIZE[1] - 26), WORDS, fill="black", font=ImageFont.load_default(20))
    image.save(FOLDER / name, "JPEG", quality=70, optimize=True)


def stick() -> None:
    """A filler stick with pale oil on its end."""
    image = ground((120, 116, 110), (70, 66, 62))
    draw = ImageDraw.Draw(image)
    draw.line([(60, 90), (430, 300)], fill=(168, 172, 178), width=26)
    draw.ellipse([400, 262, 560, 380], fill=(206, 186, 152))
    for n in range(60):
        x, y = 480 + 60 * math.cos(n * 2.4) * (n % 7) / 7, 320 + 44 * math.sin(n * 2.4) * (n % 5) / 5
        draw.ellipse([x - 4, y - 4, x + 4, y + 4], outline=(236, 226, 204))
    finished(image, "oil_on_stick.jpg")


def jar() -> None:
    """A jar of oil that stood overnight: one even layer beside a ruler."""
    image = ground((226, 224, 218), (176, 172, 164))
    draw = ImageDraw.Draw(image)
    draw.rounded_rectangle([220, 70, 420, 430], 24, fill=(244, 244, 240), outline=(90, 90, 90), width=5)
    draw.rounded_rectangle([228, 170, 412, 422], 18, fill=(156, 108, 40))
    draw.rectangle([206, 56, 434, 92], fill=(60, 62, 66))
    draw.rectangle([470, 60, 510, 430], fill=(230, 206, 120))
    for n, y in enumerate(range(70, 425, 12)):
        draw.line([(470, y), (492 if n % 5 == 0 else 482, y)], fill="black", width=2)
    finished(image, "jar_next_morning.jpg")


def hose() -> None:
    """A thin hose that hangs in a loop below the axle."""
    image = ground((96, 100, 106), (52, 52, 54))
    draw = ImageDraw.Draw(image)
    draw.ellipse([330, 130, 560, 360], fill=(128, 130, 134), outline=(30, 30, 30), width=4)
    draw.ellipse([420, 220, 470, 270], fill=(60, 60, 62))
    points = [(400, 140), (330, 90), (240, 120), (190, 240), (210, 370), (270, 420), (320, 390), (318, 330)]
    draw.line(points, fill=(18, 18, 18), width=15, joint="curve")
    finished(image, "breather_hose.jpg")


def splines() -> None:
    """The teeth of a coupling with red dust between them."""
    image = ground((150, 146, 140), (104, 98, 92))
    draw = ImageDraw.Draw(image)
    middle, dust = (320, 220), random.Random(3)
    draw.ellipse([140, 40, 500, 400], fill=(112, 114, 118), outline=(40, 40, 40), width=4)
    for n in range(24):
        turn = math.tau * n / 24
        far, near = 120, 92
        tooth = [
            (middle[0] + r * math.cos(turn + d), middle[1] + r * math.sin(turn + d))
            for r, d in ((far, -0.07), (near, -0.045), (near, 0.045), (far, 0.07))
        ]
        draw.polygon(tooth, fill=(176, 178, 182), outline=(60, 60, 60))
    for _ in range(900):
        turn, r = dust.uniform(0, math.tau), dust.gauss(112, 9)
        x, y = middle[0] + r * math.cos(turn), middle[1] + r * math.sin(turn)
        draw.ellipse([x - 2, y - 2, x + 2, y + 2], fill=(150, 62 + dust.randint(-14, 14), 34))
    finished(image, "splines_wheel_side.jpg", 0.8)


def main() -> None:
    for draw in (stick, jar, hose, splines):
        draw()


if __name__ == "__main__":
    main()
