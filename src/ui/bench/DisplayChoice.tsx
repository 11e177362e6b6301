import {
  Button,
  Dialog,
  DialogTrigger,
  Label,
  Popover,
  Radio,
  RadioGroup,
} from 'react-aria-components'
import type { DisplaySpace } from '../../core/colour/displaySignal.ts'
import { setView } from '../../store/session.ts'
import { useApp, useAppState } from '../appContext.ts'

type Choice = {
  readonly id: DisplaySpace
  readonly label: string
  /** For the bar, where there is little room. */
  readonly short: string
  readonly says: string
}

const CHOICES: readonly Choice[] = [
  {
    id: 'srgb',
    label: 'sRGB',
    short: 'sRGB',
    says: 'The signal is turned into sRGB (IEC 61966-2-1), so that a display that keeps to sRGB shows what a BT.1886 display would.',
  },
  {
    id: 'display-p3',
    label: 'Display P3',
    short: 'P3',
    says: 'The same for a display with the wider primaries of Display P3, which also keeps more of what BT.2020 can hold.',
  },
  {
    id: 'as-coded',
    label: 'As coded',
    short: 'coded',
    says: 'Code values go to the window as they are: for a display that is itself set to BT.1886, gamma 2.4.',
  },
]

const isSpace = (id: string): id is DisplaySpace => CHOICES.some((choice) => choice.id === id)

/** What is assumed of the display the picture is seen on. */
export const DisplayChoice = () => {
  const { store } = useApp()
  const display = useAppState(({ view }) => view.display)
  const chosen = CHOICES.find(({ id }) => id === display)
  return (
    <DialogTrigger>
      <Button className="button" aria-label={`Shown for ${chosen?.label ?? ''}`}>
        {chosen?.short} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="display-popover" placement="bottom end">
        <Dialog aria-label="Display assumed" className="display-choice">
          <RadioGroup
            value={display}
            onChange={(id) => {
              if (isSpace(id)) setView(store, { display: id })
            }}
          >
            <Label>The picture is shown for a display that is</Label>
            {CHOICES.map(({ id, label, says }) => (
              <Radio key={id} value={id} className="display-radio">
                <b>{label}</b>
                <span>{says}</span>
              </Radio>
            ))}
          </RadioGroup>
          <p>
            The signal is taken to be made for Rec. ITU-R BT.1886 with black at 0, and for primaries
            of BT.709, or of BT.2020 where the reel is coded so.
          </p>
          <p>
            A browser window is not a graded monitor: browser, system and display each change what
            it shows. The instruments measure the signal and go by none of this.
          </p>
        </Dialog>
      </Popover>
    </DialogTrigger>
  )
}
