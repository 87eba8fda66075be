import type { AnyFamily } from './family.ts'
import { flyCutterHead } from './fly-cutter-head/family.ts'

/** Every kind of tool there is. A new family adds one line. */
export const families: readonly AnyFamily[] = [flyCutterHead as unknown as AnyFamily]
