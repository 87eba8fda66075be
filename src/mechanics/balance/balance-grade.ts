/**
 * Balance quality grades G of ISO 21940-11: the speed of the centroid on its circle, e·ω in mm/s. Reported, never a
 * limit here: a one-bit head lies far outside any grade and yet runs.
 */
export const balanceGrades = [0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000] as const

/** G, mm/s, of an eccentricity (mm) at a speed (rad/s). */
export const balanceGrade = (eccentricity: number, speed: number): number => eccentricity * speed

/** The finest grade of the standard's list that G (mm/s) keeps; undefined where it lies beyond the coarsest. */
export const gradeKept = (g: number): number | undefined => balanceGrades.find((grade) => g <= grade)

/** Unbalance, kg·mm, that a grade (mm/s) permits for a mass (kg) at a speed (rad/s, above 0): U = G·m/ω. */
export const permissibleUnbalance = (grade: number, mass: number, speed: number): number => (grade * mass) / speed
