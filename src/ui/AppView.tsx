import { Agree } from './agree/Agree.tsx'
import { type App, AppContext, useAppState } from './appContext.ts'
import { Bench } from './bench/Bench.tsx'
import { ProposalBar } from './bench/ProposalBar.tsx'
import { SaveFrameDialog } from './bench/SaveFrameDialog.tsx'
import { useCommandKeys } from './commands/useCommandKeys.ts'
import { HandOver } from './handover/HandOver.tsx'
import { CommandList } from './header/CommandList.tsx'
import { Header } from './header/Header.tsx'
import { ImportDialog } from './import/ImportDialog.tsx'
import { ProcessDialog } from './import/ProcessDialog.tsx'
import { RescanDialog } from './import/RescanDialog.tsx'
import { FindingBar } from './ledger/FindingBar.tsx'
import { Ledger } from './ledger/Ledger.tsx'
import { LineUp } from './lineup/LineUp.tsx'
import { NoticeBar } from './parts/NoticeBar.tsx'
import { Prepare } from './prepare/Prepare.tsx'
import { Hints } from './settings/Hints.tsx'
import { SettingsDialog } from './settings/SettingsDialog.tsx'
import { useTextSize } from './settings/useTextSize.ts'
import { CodingDialog } from './start/CodingDialog.tsx'
import { StartScreen } from './start/StartScreen.tsx'
import { useFileDrop } from './start/useFileDrop.ts'
import { useFocusLedger } from './start/useFocusLedger.ts'
import { Transfer } from './transfer/Transfer.tsx'
import { Transport } from './transport/Transport.tsx'

/** The whole screen. */
export const AppView = ({ app }: { app: App }) => (
  <AppContext value={app}>
    <Screen />
    <CodingDialog />
    <CommandList />
    <SettingsDialog />
    <SaveFrameDialog />
    <ImportDialog />
    <ProcessDialog />
    <RescanDialog />
    <NoticeBar />
  </AppContext>
)

const Screen = () => {
  const hasJob = useAppState((state) => state.history !== undefined)
  const isOver = useFileDrop()
  useCommandKeys()
  useTextSize()
  return (
    <div className={isOver ? 'screen is-drop' : 'screen'}>
      {hasJob ? <Workplace /> : <StartScreen />}
    </div>
  )
}

const Workplace = () => {
  useFocusLedger()
  const step = useAppState((state) => state.step)
  return (
    <>
      <Header />
      {step === 'prepare' && <Prepare />}
      {step === 'agree' && <Agree />}
      {step === 'line-up' && <LineUp />}
      {step === 'transfer' && <Transfer />}
      {step === 'hand-over' && <HandOver />}
      {step === 'rehearse' && (
        <main className="rehearse" aria-label="Rehearse">
          <div className="list-side">
            <FindingBar />
            <Ledger />
            <ProposalBar />
            <Hints />
          </div>
          <div className="bench-side">
            <Bench />
          </div>
          <Transport />
        </main>
      )}
    </>
  )
}
