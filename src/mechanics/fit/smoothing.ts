/**
 * Interference that is lost, mm on the diameter, because the peaks of both surfaces are flattened: factor · (Rz bore +
 * Rz spigot), Rz in mm. The factor is a setting: 0.8 in the older edition of DIN 7190, 0.4 in DIN 7190-1:2017 (second-hand).
 * RangeError for negative figures, NaN or infinity.
 */
export function smoothingLoss(boreRoughness: number, spigotRoughness: number, factor: number): number {
  for (const figure of [boreRoughness, spigotRoughness, factor]) {
    if (!(figure >= 0 && Number.isFinite(figure))) throw new RangeError(`roughness or smoothing factor: ${figure}`)
  }
  return factor * (boreRoughness + spigotRoughness)
}

/** Interference, mm on the diameter, that is left to press: measured less what is lost; 0 where nothing is left. */
export function effectiveInterference(measured: number, loss: number): number {
  return Math.max(0, measured - loss)
}
