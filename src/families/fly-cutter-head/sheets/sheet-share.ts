/** How much of the shorter side of a sheet a long part alone on it may take: common practice, no source. */
export const longPart = 0.6
/** How much of it the whole tool may take, which stands on a sheet twice: common practice, no source. */
export const wholeTool = 0.45
