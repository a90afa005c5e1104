/** The largest file that phones make of a photograph, with room to spare. */
export const largestPhotoBytes = 30 * 1024 * 1024

/** A sensor of 50 megapixels is the largest that phones send; decoding more takes memory that a small machine does not have. */
export const mostPhotoPixels = 50_000_000

/** The longest side of a photograph as it is kept to be looked at, px. */
export const keptPhotoPx = 2048
