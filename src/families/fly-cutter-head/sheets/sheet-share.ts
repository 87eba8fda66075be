/** How much of the shorter side of a sheet a long part alone on it may take: common practice, no source. */
export const longPart = 0.6
