using Coilwright.Workshop.Entry;

namespace Coilwright.Bench.Tests;

public sealed class WaveFileTests
{
    [Fact]
    public void What_is_written_is_read_back_to_the_last_bit()
    {
        double[] samples = [0, 0.5, -0.5, 1, -1, 1e-6, 0.333];
        WaveFile read = WaveFile.Read(WaveFile.Write(48_000, samples)).Value!;
        Assert.Equal(48_000, read.RateHz);
        Assert.Equal(samples, Assert.Single(read.Channels), (a, b) => Math.Abs(a - b) < 1.0 / 8_000_000);
    }

    [Fact]
    public void No_bytes_at_all_break_the_reader() =>
        Gen
            .Byte.Array[0, 200]
            .ForAll(bytes =>
            {
                byte[] file = [.. "RIFF\0\0\0\0WAVE"u8, .. bytes];
                ReadOutcome<WaveFile> outcome = WaveFile.Read(file);
                return outcome.Ok || outcome.Problems.Count > 0;
            });

    [Fact]
    public void What_is_no_sound_is_said() =>
        Assert.All(
            (byte[][])
                [
                    [],
                    [.. "RIFF1234AVI "u8],
                    [.. "RIFF1234WAVE"u8],
                ],
            bytes => Assert.NotEmpty(WaveFile.Read(bytes).Problems)
        );
}
