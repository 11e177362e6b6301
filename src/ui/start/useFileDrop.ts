import { useEffect, useState } from 'react'
import { useApp } from '../appContext.ts'

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

/** Lets files be dropped anywhere on the screen; true while some are held over it. */
export const useFileDrop = (): boolean => {
  const { services } = useApp()
  const [isOver, setIsOver] = useState(false)
  useEffect(() => {
    const onDragOver = (event: DragEvent) => {
      if (!hasFiles(event)) return
      event.preventDefault()
      setIsOver(true)
    }
    const onDragLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setIsOver(false)
    }
    const onDrop = (event: DragEvent) => {
      event.preventDefault()
      setIsOver(false)
      const files = [...(event.dataTransfer?.files ?? [])]
      if (files.length > 0) void services.openAny(files)
    }
    window.addEventListener('dragover', onDragOver)
    window.addEventListener('dragleave', onDragLeave)
    window.addEventListener('drop', onDrop)
    return () => {
      window.removeEventListener('dragover', onDragOver)
      window.removeEventListener('dragleave', onDragLeave)
      window.removeEventListener('drop', onDrop)
    }
  }, [services])
  return isOver
}
