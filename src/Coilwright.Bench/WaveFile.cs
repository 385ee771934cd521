using System.Buffers.Binary;
using System.Text;
using Coilwright.Workshop.Entry;

namespace Coilwright.Bench;

/// <summary>
/// Sound in the open RIFF WAVE form: PCM of 16, 24 or 32 bits, or 32-bit float; from memory of its public description [WAVE].
/// </summary>
/// <param name="RateHz">Samples per second.</param>
/// <param name="Channels">Values of each channel, −1…1.</param>
public sealed record WaveFile(int RateHz, IReadOnlyList<double[]> Channels)
{
    private const int HeaderLength = 44,
        Pcm = 1,
        FloatingPoint = 3,
        Extensible = 0xFFFE;

    /// <summary>Bits that a value was rounded to: 16, 24 or 32; 24 for floating point, whose fraction has as many.</summary>
    public int Bits { get; private init; } = 24;

    /// <summary>One channel as 24-bit PCM.</summary>
    public static byte[] Write(int rateHz, double[] samples)
    {
        byte[] file = new byte[HeaderLength + 3 * samples.Length + (samples.Length & 1)];
        Span<byte> at = file;
        Encoding.ASCII.GetBytes("RIFF").CopyTo(at);
        BinaryPrimitives.WriteInt32LittleEndian(at[4..], file.Length - 8);
        Encoding.ASCII.GetBytes("WAVEfmt ").CopyTo(at[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(at[20..], Pcm);
        BinaryPrimitives.WriteInt16LittleEndian(at[22..], 1);
        BinaryPrimitives.WriteInt32LittleEndian(at[24..], rateHz);
        BinaryPrimitives.WriteInt32LittleEndian(at[28..], rateHz * 3);
        BinaryPrimitives.WriteInt16LittleEndian(at[32..], 3);
        BinaryPrimitives.WriteInt16LittleEndian(at[34..], 24);
        Encoding.ASCII.GetBytes("data").CopyTo(at[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[40..], 3 * samples.Length);
        for (int i = 0; i < samples.Length; i++)
        {
            int value = (int)Math.Round(Math.Clamp(samples[i], -1, 1) * 8_388_607);
            (at[HeaderLength + 3 * i], at[HeaderLength + 3 * i + 1], at[HeaderLength + 3 * i + 2]) = (
                (byte)value,
                (byte)(value >> 8),
                (byte)(value >> 16)
            );
        }

        return file;
    }

    /// <summary>Reads a file, or says what is wrong with it.</summary>
    public static ReadOutcome<WaveFile> Read(ReadOnlySpan<byte> file)
    {
        if (file.Length < 12 || !file[..4].SequenceEqual("RIFF"u8) || !file[8..12].SequenceEqual("WAVE"u8))
        {
            return Wrong("this is not a WAV file");
        }

        int format = 0,
            channels = 0,
            rate = 0,
            bits = 0;
        for (int at = 12; at + 8 <= file.Length; )
        {
            uint length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            ReadOnlySpan<byte> name = file.Slice(at, 4),
                body = file.Slice(at + 8, (int)Math.Min(length, (uint)(file.Length - at - 8)));
            if (name.SequenceEqual("fmt "u8) && body.Length >= 16)
            {
                format = BinaryPrimitives.ReadUInt16LittleEndian(body);
                channels = BinaryPrimitives.ReadUInt16LittleEndian(body[2..]);
                rate = BinaryPrimitives.ReadInt32LittleEndian(body[4..]);
                bits = BinaryPrimitives.ReadUInt16LittleEndian(body[14..]);
                format = format == Extensible && body.Length >= 26 ? BinaryPrimitives.ReadUInt16LittleEndian(body[24..]) : format;
            }
            else if (name.SequenceEqual("data"u8))
            {
                return Sound(format, channels, rate, bits, body);
            }

            at = (int)Math.Min(file.Length, at + 8L + length + (length & 1));
        }

        return Wrong("this WAV file holds no sound");
    }

    private static ReadOutcome<WaveFile> Sound(int format, int channels, int rate, int bits, ReadOnlySpan<byte> body)
    {
        bool known = (format == Pcm && bits is 16 or 24 or 32) || (format == FloatingPoint && bits == 32);
        if (!known || channels is < 1 or > 64 || rate is < 4000 or > 400_000)
        {
            return Wrong(
                "this WAV file's form is not read here",
                $"form {format}, {bits} bits, {channels} channels, {rate} Hz",
                "PCM of 16, 24 or 32 bits or 32-bit float, 4 to 400 kHz"
            );
        }

        int size = bits / 8,
            count = body.Length / (size * channels);
        double[][] values = [.. Enumerable.Range(0, channels).Select(_ => new double[count])];
        for (int i = 0; i < count * channels; i++)
        {
            ReadOnlySpan<byte> one = body.Slice(i * size, size);
            double value = bits switch
            {
                16 => BinaryPrimitives.ReadInt16LittleEndian(one) / 32768.0,
                24 => ((one[0] << 8 | one[1] << 16 | one[2] << 24) >> 8) / 8_388_608.0,
                _ when format == FloatingPoint => BinaryPrimitives.ReadSingleLittleEndian(one),
                _ => BinaryPrimitives.ReadInt32LittleEndian(one) / 2_147_483_648.0,
            };
            values[i % channels][i / channels] = double.IsFinite(value) ? value : 0;
        }

        return new ReadOutcome<WaveFile>(new WaveFile(rate, values) { Bits = format == FloatingPoint ? 24 : bits }, []);
    }

    private static ReadOutcome<WaveFile> Wrong(string message, string? understood = null, string? allowed = null) =>
        new(null, [new Problem("", message, understood, allowed)]);
}
