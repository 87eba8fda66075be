/**
 * Cholesky factor of a symmetric positive definite n × n matrix, lower triangle given by rows, in place. A pivot that
 * rounding has eaten is held at 1e-15 of its diagonal, which only shortens a step.
 */
export function factor(h: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    let d = h[j * n + j]!
    const least = 1e-15 * d
    for (let k = 0; k < j; k++) d -= h[j * n + k]! * h[j * n + k]!
    d = Math.sqrt(Math.max(d, least, 1e-300))
    h[j * n + j] = d
    for (let i = j + 1; i < n; i++) {
      let v = h[i * n + j]!
      for (let k = 0; k < j; k++) v -= h[i * n + k]! * h[j * n + k]!
      h[i * n + j] = v / d
    }
  }
}

/** Solves L·Lᵀ·y = b in place of b, L being what `factor` left. */
export function backSubstitute(h: Float64Array, b: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) {
    let v = b[i]!
    for (let k = 0; k < i; k++) v -= h[i * n + k]! * b[k]!
    b[i] = v / h[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    let v = b[i]!
    for (let k = i + 1; k < n; k++) v -= h[k * n + i]! * b[k]!
    b[i] = v / h[i * n + i]!
  }
}
