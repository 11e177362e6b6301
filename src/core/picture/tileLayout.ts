/** A part of a whole: 0…1 of its width and height, from the top left. */
export type TileArea = {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export type TileLayout = {
  /** The size of all together, whole pixels. */
  readonly width: number
  readonly height: number
  readonly areas: readonly TileArea[]
}

/**
 * `count` pictures of one shape side by side, in as many columns as make them largest in the room
 * (in pixels, as is the gap between them); row by row.
 */
export const tileLayout = (
  count: number,
  aspect: number,
  room: { readonly width: number; readonly height: number },
  gap: number,
): TileLayout => {
  const tileWidth = (columns: number): number => {
    const rows = Math.ceil(count / columns)
    const across = (room.width - gap * (columns - 1)) / columns
    const down = (room.height - gap * (rows - 1)) / rows
    return Math.min(across, down * aspect)
  }
  let columns = 1
  for (let wanted = 2; wanted <= count; wanted++)
    if (tileWidth(wanted) > tileWidth(columns)) columns = wanted
  const rows = Math.ceil(count / columns)
  const tile = {
    width: Math.max(1, Math.floor(tileWidth(columns))),
    height: Math.max(1, Math.floor(tileWidth(columns) / aspect)),
  }
  const width = columns * tile.width + gap * (columns - 1)
  const height = rows * tile.height + gap * (rows - 1)
  const areas = Array.from({ length: count }, (_, index) => ({
    left: ((index % columns) * (tile.width + gap)) / width,
    top: (Math.floor(index / columns) * (tile.height + gap)) / height,
    width: tile.width / width,
    height: tile.height / height,
  }))
  return { width, height, areas }
}

/** Where a place of the whole lies within the tile that it is in, 0…1 of it; undefined between. */
export const placeInTile = (
  areas: readonly TileArea[],
  { x, y }: { readonly x: number; readonly y: number },
): { readonly x: number; readonly y: number } | undefined => {
  for (const { left, top, width, height } of areas) {
    const place = { x: (x - left) / width, y: (y - top) / height }
    if (place.x >= 0 && place.x <= 1 && place.y >= 0 && place.y <= 1) return place
  }
  return undefined
}
