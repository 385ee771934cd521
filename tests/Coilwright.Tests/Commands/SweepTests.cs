using System.Buffers.Binary;
using System.Text;
using System.Text.Json;
using Coilwright.Bench;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Tests.Commands;

/// <summary>The measurement signal and its recording.</summary>
public sealed class SweepTests
{
    [Fact]
    public async Task A_recording_of_the_signal_gives_back_the_pickup()
    {
        using TestFolder folder = new();
        string signal = folder.PathOf("sweep.wav"),
            recording = folder.PathOf("take.wav");
        CommandRun made = await CommandRun.Of("sweep", "make", signal, "--length", "3 s");
        Assert.Equal((0, ""), (made.Exit, made.Error));
        ReadOutcome<WaveFile> written = WaveFile.Read(File.ReadAllBytes(signal));
        Assert.Equal((48_000, 144_000), (written.Value!.RateHz, written.Value.Channels[0].Length));

        LumpedPickup pickup = new(6200, 2.5, 120e-12);
        File.WriteAllBytes(
            recording,
            Stereo(48_000, SimulatedRecording.Of(new LogSweep(20, 20_000, 3), 48_000, pickup, 22e3, 1e6, 60e-12))
        );
        CommandRun read = await CommandRun.Of(
            "sweep",
            "read",
            recording,
            "--length",
            "3 s",
            "--resistor",
            "22k",
            "--input-resistance",
            "1M",
            "--input-capacitance",
            "60pF",
            "--json"
        );
        Assert.Equal((0, ""), (read.Exit, read.Error));
        Assert.Empty(Schemas.Complaints("fit.json", read.Output));
        using JsonDocument document = JsonDocument.Parse(read.Output);
        double Part(string name) => document.RootElement.GetProperty("parts").GetProperty(name).GetProperty("value").GetDouble();
        Assert.Equal(2.5, Part("inductance"), 0.02);
        Assert.Equal(6200, Part("resistance"), 50.0);
        Assert.Equal(120e-12, Part("capacitance"), 2e-12);

        CommandRun table = await CommandRun.Of("sweep", "read", recording, "--length", "3 s", "--resistor", "22k", "--csv");
        CommandRun fitted = await CommandRun.Of("fit", folder.Write("take.csv", table.Output));
        Assert.Equal(0, fitted.Exit);
    }

    [Fact]
    public async Task What_is_wrong_with_a_recording_is_said()
    {
        using TestFolder folder = new();
        string mono = folder.PathOf("mono.wav"),
            noise = folder.PathOf("noise.wav");
        File.WriteAllBytes(mono, WaveFile.Write(48_000, new double[1000]));
        Random random = new(3);
        double[][] scatter =
        [
            .. Enumerable.Range(0, 2).Select(_ => Enumerable.Range(0, 200_000).Select(_ => 0.2 * (random.NextDouble() - 0.5)).ToArray()),
        ];
        File.WriteAllBytes(noise, Stereo(48_000, scatter));
        foreach (
            (string file, string said) in new[]
            {
                (mono, "two channels"),
                (noise, "not found"),
                (folder.Write("text.wav", "no sound"), "not a WAV"),
                (folder.PathOf("none.wav"), "no such file"),
            }
        )
        {
            CommandRun run = await CommandRun.Of("sweep", "read", file, "--length", "3 s", "--resistor", "22k");
            Assert.Equal((2, ""), (run.Exit, run.Output));
            Assert.Contains(said, run.Error, StringComparison.Ordinal);
        }

        Assert.Equal(2, (await CommandRun.Of("sweep", "make", folder.PathOf("a.wav"), "--rate", "22050")).Exit);
    }

    /// <summary>Two channels of 16-bit PCM, as most recorders write.</summary>
    private static byte[] Stereo(int rateHz, double[][] channels)
    {
        int count = channels[0].Length;
        byte[] file = new byte[44 + 4 * count];
        Span<byte> at = file;
        Encoding.ASCII.GetBytes("RIFF").CopyTo(at);
        BinaryPrimitives.WriteInt32LittleEndian(at[4..], file.Length - 8);
        Encoding.ASCII.GetBytes("WAVEfmt ").CopyTo(at[8..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[16..], 16);
        BinaryPrimitives.WriteInt16LittleEndian(at[20..], 1);
        BinaryPrimitives.WriteInt16LittleEndian(at[22..], 2);
        BinaryPrimitives.WriteInt32LittleEndian(at[24..], rateHz);
        BinaryPrimitives.WriteInt16LittleEndian(at[32..], 4);
        BinaryPrimitives.WriteInt16LittleEndian(at[34..], 16);
        Encoding.ASCII.GetBytes("data").CopyTo(at[36..]);
        BinaryPrimitives.WriteInt32LittleEndian(at[40..], 4 * count);
        for (int i = 0; i < count; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(at[(44 + 4 * i)..], (short)Math.Round(channels[0][i] * 32767));
            BinaryPrimitives.WriteInt16LittleEndian(at[(46 + 4 * i)..], (short)Math.Round(channels[1][i] * 32767));
        }

        return file;
    }
}
