"""Each burn: whether it is lit, held and put out as it can be, with fuel to spare."""
