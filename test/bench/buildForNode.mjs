import { join } from 'node:path'
import { build } from 'vite'

/** Makes one file for Node of a TypeScript entry of this folder, and tells where it is. */
export const buildForNode = async (root, folder, name) => {
  const outDir = join(folder, name)
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      lib: { entry: join(root, `test/bench/${name}.ts`), formats: ['es'], fileName: name },
      outDir,
      target: 'node20',
      minify: false,
      rollupOptions: { external: /^node:/u },
    },
  })
  return join(outDir, `${name}.js`)
}
