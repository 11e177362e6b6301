import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

type Place = { readonly left: number; readonly top: number }

/** Under the field, or over it where the screen ends; never past the screen's right side. */
const placeBy = (field: HTMLElement, hint: HTMLElement): Place => {
  const zoom = field.currentCSSZoom ?? 1
  const { left, top, bottom } = field.getBoundingClientRect()
  const { width, height } = hint.getBoundingClientRect()
  const isUnder = bottom + height <= window.innerHeight
  const mostLeft = document.documentElement.clientWidth * zoom - width
  return {
    left: Math.max(0, Math.min(left, mostLeft)) / zoom,
    top: (isUnder ? bottom : top - height) / zoom,
  }
}

export type NumberHintProps = {
  readonly id: string
  /** The field it stands under. */
  readonly by: RefObject<HTMLElement | null>
  readonly says: string
}

/** A few words by a field, over everything else, so that no panel cuts them off. */
export const NumberHint = ({ id, by, says }: NumberHintProps) => {
  const hint = useRef<HTMLSpanElement>(null)
  const [place, setPlace] = useState<Place>()
  useLayoutEffect(() => {
    if (by.current && hint.current) setPlace(placeBy(by.current, hint.current))
  }, [by])
  return (
    <span className="number-hint" role="status" id={id} ref={hint} style={place}>
      {says}
    </span>
  )
}
