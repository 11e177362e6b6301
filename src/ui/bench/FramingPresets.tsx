import {
  Button,
  Header,
  Menu,
  MenuItem,
  MenuSection,
  MenuTrigger,
  Popover,
  Text,
} from 'react-aria-components'
import type { FilmAperture } from '../../core/framing/filmAperture.ts'
import { type AperturePreset, aperturePresets } from '../../core/framing/frameToAperture.ts'
import type { Gauge } from '../../core/time/footage.ts'
import { frameTo } from '../../store/framingChoices.ts'
import { useApp } from '../appContext.ts'
import { formatNumber } from '../parts/numberText.ts'

const millimetres = ({ width, height }: FilmAperture): string =>
  `${formatNumber(width, 2)} × ${formatNumber(height, 2)} mm`

/** Size and where it was found: what a person must know before trusting it. */
const factsOf = (area: FilmAperture): string =>
  [
    millimetres(area),
    ...(area.standard === '' ? [] : [area.standard]),
    area.source === 'secondary' ? 'secondary source' : 'from memory',
  ].join(' · ')

const BESIDE_TRACK =
  ' The picture of a sound print lies 1.26 mm beside the middle of the film (from memory).'

const keyOf = ({ scanned, wanted }: AperturePreset): string => `${scanned.id} ${wanted.id}`

/** Framings that show one area of the film from a scan of another, for the reel's gauge. */
export const FramingPresets = ({ gauge }: { gauge: Gauge }) => {
  const { store } = useApp()
  const presets = aperturePresets(gauge)
  if (presets.length === 0)
    return <span className="dim">no apertures known for certain of this gauge</span>
  const scanned = [...new Set(presets.map((preset) => preset.scanned))]
  return (
    <MenuTrigger>
      <Button className="button">
        Apertures of the film <span aria-hidden="true">▴</span>
      </Button>
      <Popover className="preset-menu" placement="top start">
        <Menu
          aria-label="Apertures of the film"
          onAction={(key) => {
            const preset = presets.find((one) => keyOf(one) === key)
            if (preset) frameTo(store, preset)
          }}
        >
          {scanned.map((area) => (
            <MenuSection key={area.id} aria-label={`Scanned: ${area.name}`}>
              <Header>
                scanned: {area.name}
                <span className="dim"> {factsOf(area)}</span>
              </Header>
              {presets
                .filter((preset) => preset.scanned === area)
                .map((preset) => (
                  <MenuItem key={keyOf(preset)} id={keyOf(preset)} textValue={preset.wanted.name}>
                    <Text slot="label">{preset.wanted.name}</Text>
                    <Text slot="description">{factsOf(preset.wanted)}</Text>
                  </MenuItem>
                ))}
            </MenuSection>
          ))}
        </Menu>
        <p className="dim">
          Secondary source: the size as a publication about film has it, not read in the standard.
          The scanned area is taken to fill the scan, in the middle of it.
          {presets.some(({ wanted }) => wanted.offset !== 0) && BESIDE_TRACK} Pan and tilt what is
          off.
        </p>
      </Popover>
    </MenuTrigger>
  )
}
