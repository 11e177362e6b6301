import { useEffect } from 'react'
import { watchSurface } from '../../store/surface.ts'
import { useApp } from '../appContext.ts'
import { SurfaceMidi } from './SurfaceMidi.tsx'
import { SurfacePad } from './SurfacePad.tsx'

/** Game pad and MIDI control surfaces: what they do, how they respond, and what they do now. */
export const SurfaceSection = () => {
  const { store } = useApp()
  useEffect(() => {
    watchSurface(store, true)
    return () => watchSurface(store, false)
  }, [store])
  return (
    <div className="surfaces">
      <SurfacePad />
      <SurfaceMidi />
    </div>
  )
}
