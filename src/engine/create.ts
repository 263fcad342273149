import { type IUniverConfig, LogLevel, type Plugin, type PluginCtor, Univer } from '@univerjs/core';
import { FUniver } from '@univerjs/core/facade';

type Entry = PluginCtor<Plugin> | readonly [PluginCtor<Plugin>, unknown];

export interface Preset {
  readonly plugins: readonly unknown[];
}

/**
 * A Univer with the plugins of the presets, and its facade. A plugin that several presets ask for is registered once,
 * as the last of them wants it. Univer's own `createUniver` does the same but lives in a bundle with packages under a
 * commercial licence.
 */
export function createUniver(config: Partial<IUniverConfig>, presets: readonly Preset[]) {
  const univer = new Univer({ logLevel: LogLevel.WARN, ...config });
  const plugins = new Map<string, readonly [PluginCtor<Plugin>, unknown]>();
  for (const entry of presets.flatMap((preset) => preset.plugins as readonly Entry[])) {
    const [ctor, options] = typeof entry === 'function' ? ([entry, undefined] as const) : entry;
    plugins.delete(ctor.pluginName);
    plugins.set(ctor.pluginName, [ctor, options]);
  }
  for (const [ctor, options] of plugins.values()) univer.registerPlugin(ctor, options as never);
  return { univer, api: FUniver.newAPI(univer) };
}
