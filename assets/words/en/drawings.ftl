# Drawings that cannot be used, and why.

drawing-wrong = { $name }.svg: { $error }

drawing-images = a drawing must not hold images
drawing-text = a drawing must not hold text
drawing-colors = a drawing must use flat colors
