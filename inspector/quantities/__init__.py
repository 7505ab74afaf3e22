"""Pure arithmetic about lengths, wear, fluids, tyres and fasteners; knows no record and no rule."""
