import manifoldModule, { type ManifoldToplevel } from 'manifold-3d'
import { setOC } from 'replicad'
import openCascade, { type OpenCascadeInstance } from 'replicad-opencascadejs'

/** The B-rep kernel, ready for replicad; its 23 MB are read once a test file, before any test runs. */
export const brep: OpenCascadeInstance = await openCascade()
setOC(brep)

/** The mesh kernel. */
export const meshKernel: ManifoldToplevel = await manifoldModule()
meshKernel.setup()
