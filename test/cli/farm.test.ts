import { execFile, execFileSync } from 'node:child_process'
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MAIN, ROOT, reelwright } from './reelwright.ts'
import { dpxScan, sumsOf } from './transferScan.ts'

const FARM = join(ROOT, 'docs/farm')

const isThere = (program: string): boolean => {
  try {
    execFileSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

const hasYaml = (): boolean => {
  try {
    execFileSync('python3', ['-c', 'import yaml'], { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

let folder = ''
let job = ''
let env: NodeJS.ProcessEnv = {}
let single: Readonly<Record<string, string>> = {}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'reelwright-farm-'))
  job = dpxScan(folder, 24)
  // The command by its own name, as it is where it is installed.
  const bin = join(folder, 'bin')
  mkdirSync(bin)
  writeFileSync(join(bin, 'reelwright'), `#!/bin/sh\nexec "${process.execPath}" "${MAIN}" "$@"\n`)
  chmodSync(join(bin, 'reelwright'), 0o755)
  env = { ...process.env, PATH: `${bin}:${process.env.PATH}` }
  await reelwright(['transfer', job, '--out', join(folder, 'single')])
  single = sumsOf(join(folder, 'single'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Runs a command of the examples to its end; rejects where it fails. */
const run = (program: string, args: readonly string[], more: NodeJS.ProcessEnv = {}) =>
  new Promise<string>((done, failed) => {
    execFile(program, args, { env: { ...env, ...more } }, (failure, out, error) => {
      if (failure) failed(new Error(`${failure.message}\n${error}`))
      else done(out)
    })
  })

type Container = {
  readonly command: readonly string[]
  readonly env: readonly { readonly name: string; readonly value: string }[]
}

type KubernetesJob = {
  readonly apiVersion: string
  readonly kind: string
  readonly spec: {
    readonly completionMode?: string
    readonly completions?: number
    readonly template: { readonly spec: { readonly containers: readonly [Container] } }
  }
}

describe('the farm examples make a single pass of parts', () => {
  it.skipIf(!isThere('parallel'))('by GNU parallel (skipped where it is not there)', async () => {
    const out = join(folder, 'by-parallel')
    await run('sh', [join(FARM, 'parallel.sh'), job, out, '8', '2'])
    expect(sumsOf(out)).toEqual(single)
  })

  it('by the script of a Slurm array, its variables set as its scheduler does', async () => {
    const out = join(folder, 'by-slurm')
    const script = join(FARM, 'slurm-array.sh')
    const array = (task: number, more: NodeJS.ProcessEnv) =>
      run('sh', [script, job, out], { SLURM_ARRAY_TASK_ID: String(task), ...more })
    for (const task of [1, 2, 4]) await array(task, { SLURM_ARRAY_TASK_COUNT: '4' })
    const early = run('sh', [script, job, out, 'join', '4'])
    await expect(early).rejects.toThrow('Part 3 of 4 is missing')
    await array(3, { SLURM_ARRAY_TASK_COUNT: '1', PARTS: '4' })
    await run('sh', [script, job, out, 'join', '4'])
    expect(sumsOf(out)).toEqual(single)
  })

  it.skipIf(!hasYaml())(
    'by the commands of a Kubernetes Indexed Job (skipped where no YAML can be read)',
    async () => {
      const text = readFileSync(join(FARM, 'kubernetes-job.yaml'), 'utf8')
      const asJson =
        'import json,sys,yaml; print(json.dumps(list(yaml.safe_load_all(sys.argv[1]))))'
      const [parts, joining] = JSON.parse(
        execFileSync('python3', ['-c', asJson, text], { encoding: 'utf8' }),
      ) as [KubernetesJob, KubernetesJob]
      expect([parts, joining]).toMatchObject([
        {
          apiVersion: 'batch/v1',
          kind: 'Job',
          spec: { completionMode: 'Indexed', completions: 8 },
        },
        { apiVersion: 'batch/v1', kind: 'Job' },
      ])
      const out = join(folder, 'by-kubernetes')
      const runContainer = ({ spec }: KubernetesJob, more: NodeJS.ProcessEnv) => {
        const [{ command, env: set }] = spec.template.spec.containers
        const [program = '', ...args] = command
        const stated = Object.fromEntries(set.map(({ name, value }) => [name, value]))
        expect(stated.PARTS).toBe(String(parts.spec.completions))
        return run(program, args, { ...stated, JOB: job, OUT: out, ...more })
      }
      for (let index = 0; index < 8; index++)
        await runContainer(parts, { JOB_COMPLETION_INDEX: String(index) })
      await runContainer(joining, {})
      expect(sumsOf(out)).toEqual(single)
    },
  )
})
