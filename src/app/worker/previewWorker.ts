import type { FromPreview, PreviewPort, ToPreview } from '../../render/previewMessages.ts'
import { servePreview } from '../../render/servePreview.ts'

servePreview(self as unknown as PreviewPort<FromPreview, ToPreview>, (then) =>
  self.requestAnimationFrame(then),
)
