using System.Security.Cryptography;
using System.Text;
using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>The map of a track as bytes, exactly: a head, a digest of what follows, and every value in its place.</summary>
internal static class TrackBytes
{
    private static readonly byte[] Head = "scuff heard 1\n"u8.ToArray();

    /// <summary>The bytes.</summary>
    public static byte[] Write(TrackMap map, string? warning)
    {
        using MemoryStream body = new();
        using (BinaryWriter writer = new(body, Encoding.UTF8, leaveOpen: true))
        {
            writer.Write(map.Title);
            writer.Write(map.Artist);
            writer.Write(map.Remark);
            writer.Write(warning ?? "");
            writer.Write(map.Seconds);
            Many(writer, map.Beats, b =>
            {
                writer.Write(b.Seconds);
                writer.Write(b.BarPosition);
                writer.Write(b.Count);
            });
            One(writer, map.Tempo, writer.Write);
            One(writer, map.Meter, m =>
            {
                writer.Write(m.BeatsInBar);
                writer.Write(m.IsCompound);
            });
            One(writer, map.Swing, writer.Write);
            One(writer, map.FirstCount, writer.Write);
            Many(writer, map.Sections, s =>
            {
                writer.Write(s.FirstBeat);
                writer.Write(s.Beats);
                writer.Write(s.Label);
                writer.Write(s.Name);
                writer.Write(s.Confidence);
            });
            Many(writer, map.Breaks, b =>
            {
                writer.Write(b.Start);
                writer.Write(b.End);
                writer.Write(b.IsStop);
                writer.Write(b.Confidence);
            });
            writer.Write(map.Loudness.PerSecond);
            Many(writer, map.Loudness.Decibels, writer.Write);
        }

        byte[] bytes = body.ToArray();
        return [.. Head, .. SHA256.HashData(bytes), .. bytes];
    }

    /// <summary>Reads them; null when a single bit is not as it was written.</summary>
    public static (TrackMap Map, string? Warning)? Read(ReadOnlySpan<byte> bytes)
    {
        if (!bytes.StartsWith(Head) || bytes.Length < Head.Length + SHA256.HashSizeInBytes)
        {
            return null;
        }

        byte[] body = bytes[(Head.Length + SHA256.HashSizeInBytes)..].ToArray();
        if (!bytes.Slice(Head.Length, SHA256.HashSizeInBytes).SequenceEqual(SHA256.HashData(body)))
        {
            return null;
        }

        using BinaryReader reader = new(new MemoryStream(body), Encoding.UTF8);
        string title = reader.ReadString();
        string artist = reader.ReadString();
        string remark = reader.ReadString();
        string warning = reader.ReadString();
        TrackMap map = new()
        {
            Title = title,
            Artist = artist,
            Remark = remark,
            Seconds = reader.ReadDouble(),
            Beats = Many(reader, () => new TrackBeat(reader.ReadDouble(), reader.ReadInt32(), reader.ReadInt32())),
            Tempo = One(reader, reader.ReadDouble),
            Meter = One(reader, () => new Meter(reader.ReadInt32(), reader.ReadBoolean())),
            Swing = One(reader, reader.ReadDouble),
            FirstCount = One(reader, reader.ReadInt32),
            Sections = Many(
                reader,
                () => new TrackSection(reader.ReadInt32(), reader.ReadInt32(), reader.ReadString(), reader.ReadString(), reader.ReadDouble())),
            Breaks = Many(reader, () => new TrackBreak(reader.ReadDouble(), reader.ReadDouble(), reader.ReadBoolean(), reader.ReadDouble())),
            Loudness = new LoudnessCurve(reader.ReadDouble(), Many(reader, reader.ReadSingle)),
        };
        return (map, warning.Length > 0 ? warning : null);
    }

    private static void Many<T>(BinaryWriter writer, ValueList<T> items, Action<T> write)
    {
        writer.Write(items.Count);
        foreach (T item in items.Span)
        {
            write(item);
        }
    }

    private static void One<T>(BinaryWriter writer, Estimate<T> estimate, Action<T> write)
    {
        write(estimate.Value);
        writer.Write(estimate.Confidence);
        Many(writer, estimate.Alternatives, a =>
        {
            write(a.Value);
            writer.Write(a.Confidence);
        });
    }

    private static ValueList<T> Many<T>(BinaryReader reader, Func<T> read)
    {
        T[] items = new T[reader.ReadInt32()];
        for (int i = 0; i < items.Length; i++)
        {
            items[i] = read();
        }

        return [.. items];
    }

    private static Estimate<T> One<T>(BinaryReader reader, Func<T> read)
    {
        T value = read();
        double confidence = reader.ReadDouble();
        return new Estimate<T>(value, confidence, Many(reader, () => new Alternative<T>(read(), reader.ReadDouble())));
    }
}
