import type { PackContents } from '../core/agreement/pack/packContents.ts'
import { reviewPage } from './page.ts'

const held = document.getElementById('contents')?.textContent
if (!held) throw new Error('Bug: the pack holds nothing')
document.body.append(reviewPage(JSON.parse(held) as PackContents))
