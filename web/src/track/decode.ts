/** Sound that the program does not know (M4A, AAC and others): the browser decodes it, the program hears the samples. */

/** Samples a second that are handed over: what the ear of the program listens at, so that nothing is sent for nothing. */
export const RATE = 22_050;

/**
 * Decodes a sound file to one channel.
 * @param bytes The file; they are taken away from the caller.
 * @param context What decodes; a test puts one of its own here.
 * @returns Samples from -1 to 1 at {@link RATE}.
 * @throws When the browser does not know the kind of file either.
 */
export async function decode(
  bytes: ArrayBuffer,
  context: Pick<BaseAudioContext, 'decodeAudioData'> = new OfflineAudioContext(1, 1, RATE),
): Promise<Float32Array<ArrayBuffer>> {
  const sound = await context.decodeAudioData(bytes);
  return mixed(Array.from({ length: sound.numberOfChannels }, (_, i) => sound.getChannelData(i)));
}

/** The mean of channels of equal length. */
export function mixed(channels: readonly Float32Array[]): Float32Array<ArrayBuffer> {
  const mean = new Float32Array(channels[0]?.length ?? 0);
  for (const channel of channels) {
    for (let i = 0; i < mean.length; i++) mean[i]! += channel[i]! / channels.length;
  }
  return mean;
}
