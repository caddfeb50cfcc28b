"""unpack.py IN.sf3 OUT.sf2: a sound font whose samples are packed as Ogg Vorbis, with plain samples, which libfluidsynth plays sooner.

Needs libsndfile (SNDFILE names it where the system does not find it) and numpy.
"""
import ctypes
import os
import struct
import sys
import tempfile

import numpy as np

SPACE, PACKED = 46, 0x10                    # zeros after every sample, by the standard; the flag of a packed one


class Info(ctypes.Structure):
    _fields_ = [('frames', ctypes.c_int64)] + [(name, ctypes.c_int) for name in ('samplerate', 'channels', 'format', 'sections', 'seekable')]


def library():
    lib = ctypes.CDLL(os.environ.get('SNDFILE', 'libsndfile.so.1'))
    lib.sf_open.restype, lib.sf_open.argtypes = ctypes.c_void_p, [ctypes.c_char_p, ctypes.c_int, ctypes.c_void_p]
    lib.sf_readf_float.restype, lib.sf_readf_float.argtypes = ctypes.c_int64, [ctypes.c_void_p, ctypes.c_void_p, ctypes.c_int64]
    lib.sf_close.argtypes = [ctypes.c_void_p]
    return lib


def decoded(lib, packed, path):
    with open(path, 'wb') as file:
        file.write(packed)
    info = Info()
    sound = lib.sf_open(path.encode(), 0x10, ctypes.byref(info))
    if not sound or info.channels != 1:
        sys.exit('A sample could not be decoded.')
    samples = np.zeros(max(1, info.frames), np.float32)
    count = lib.sf_readf_float(sound, samples.ctypes.data_as(ctypes.c_void_p), info.frames)
    lib.sf_close(sound)
    return np.clip(np.rint(samples[:count] * 32767), -32768, 32767).astype('<i2')


def chunks(data):
    at = 0
    while at + 8 <= len(data):
        name, size = struct.unpack('<4sI', data[at:at + 8])
        yield name, data[at + 8:at + 8 + size]
        at += 8 + size + (size % 2 if data[at + 8 + size:at + 9 + size] == b'\0' else 0)          # some leave the filling byte out


def chunk(name, body):
    return struct.pack('<4sI', name, len(body)) + body + b'\0' * (len(body) % 2)


def unpacked(lists):
    lib, found = library(), {}
    packed, heads = dict(chunks(lists[b'sdta']))[b'smpl'], dict(chunks(lists[b'pdta']))[b'shdr']
    plain, at, kept = [], 0, b''
    with tempfile.TemporaryDirectory() as folder:
        for i in range(0, len(heads), 46):
            name, start, end, loop, stop, rate, pitch, correction, link, kind = struct.unpack('<20s5IBbHH', heads[i:i + 46])
            if kind & PACKED:
                if (start, end) not in found:
                    samples = decoded(lib, packed[start:end], folder + '/sample.ogg')
                    found[start, end] = at, at + len(samples)
                    plain += [samples.tobytes(), b'\0' * 2 * SPACE]
                    at += len(samples) + SPACE
                start, end = found[start, end]
                loop, stop, kind = start + loop, start + stop, kind & ~PACKED
            kept += struct.pack('<20s5IBbHH', name, start, end, loop, stop, rate, pitch, correction, link, kind)
    return b''.join(plain), kept


def main():
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    with open(sys.argv[1], 'rb') as file:
        data = file.read()
    lists = {body[:4]: body[4:] for name, body in chunks(data[12:]) if name == b'LIST'}
    plain, heads = unpacked(lists)
    info = b''.join(chunk(name, struct.pack('<HH', 2, 1) if name == b'ifil' else body) for name, body in chunks(lists[b'INFO']))
    rest = b''.join(chunk(name, heads if name == b'shdr' else body) for name, body in chunks(lists[b'pdta']))
    body = b'sfbk' + b''.join(chunk(b'LIST', name + part) for name, part in ((b'INFO', info), (b'sdta', chunk(b'smpl', plain)), (b'pdta', rest)))
    with open(sys.argv[2], 'wb') as file:
        file.write(chunk(b'RIFF', body))


if __name__ == '__main__':
    main()
