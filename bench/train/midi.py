"""Standard MIDI Files: enough to read what people and programs wrote, and to write songs at a thousand ticks a second."""
import struct


def _number(data, at):
    value = 0
    while True:
        byte, at = data[at], at + 1
        value = value << 7 | byte & 127
        if byte < 128:
            return value, at


def read(data):
    """Ticks a quarter, notes [(on, off, channel, pitch, velocity, program)], tempos [(tick, microseconds a quarter)], meters [(tick, beats, unit)]."""
    at, notes, tempos, meters, program = 14, [], [], [], {}
    quarter = struct.unpack('>H', data[12:14])[0]
    while at + 8 <= len(data):
        end = min(len(data), at + 8 + struct.unpack('>I', data[at + 4:at + 8])[0])
        at += 8
        tick, status, on = 0, 0, {}
        while at < end:
            wait, at = _number(data, at)
            tick += wait
            if data[at] >= 128:
                status, at = data[at], at + 1
            if status >= 0xF0:
                kind = data[at] if status == 0xFF else None
                size, at = _number(data, at + (status == 0xFF))
                if kind == 0x51:
                    tempos.append((tick, int.from_bytes(data[at:at + 3], 'big')))
                elif kind == 0x58:
                    meters.append((tick, data[at], 1 << data[at + 1]))
                at += size
                continue
            kind, channel = status >> 4, status & 15
            if kind in (12, 13):
                if kind == 12:
                    program[channel] = data[at]
                at += 1
                continue
            pitch, velocity, at = data[at], data[at + 1], at + 2
            if kind == 9 and velocity:
                on.setdefault((channel, pitch), []).append((tick, velocity, program.get(channel, 0)))
            elif kind in (8, 9) and on.get((channel, pitch)):
                start, loud, which = on[channel, pitch].pop(0)
                notes.append((start, max(tick, start + 1), channel, pitch, loud, which))
        at = end
    return quarter, sorted(notes), sorted(tempos), sorted(meters)


def write(path, events):
    """Events [(milliseconds, order within one millisecond, bytes)]."""
    body, last = bytearray(b'\x00\xff\x51\x03\x0f\x42\x40'), 0
    for tick, _, data in sorted(events, key=lambda e: e[:2]):
        wait, digits = tick - last, []
        while True:
            digits.append(wait & 127 | (128 if digits else 0))
            wait >>= 7
            if not wait:
                break
        body += bytes(reversed(digits)) + data
        last = tick
    body += b'\x00\xff\x2f\x00'
    with open(path, 'wb') as file:
        file.write(b'MThd' + struct.pack('>IHHH', 6, 0, 1, 1000) + b'MTrk' + struct.pack('>I', len(body)) + body)
