using System.Text.Json;
using Coilwright.Bench;

namespace Coilwright.Tests.Commands;

/// <summary>coilwright listen.</summary>
public sealed class ListenTests
{
    private static readonly string s_bridge = RepositoryFiles.PathOf("demo/recipes/harbour-bridge.json"),
        s_twin = RepositoryFiles.PathOf("demo/recipes/breakwater-twin.json"),
        s_player = RepositoryFiles.PathOf("demo/loads/player.json");

    [Fact]
    public async Task A_string_is_heard_and_told_in_words_and_in_the_public_format()
    {
        using TestFolder folder = new();
        string wav = folder.PathOf("heard.wav");
        string[] line = ["listen", s_bridge, "--load", s_player, "--pitch", "110Hz", "--pluck", "120mm", "--length", "1s", "--wav", wav];
        (CommandRun words, CommandRun json) = (await CommandRun.Of(line), await CommandRun.Of([.. line, "--json"]));
        Assert.Equal((0, 0, ""), (words.Exit, json.Exit, words.Error + json.Error));
        Assert.Empty(Schemas.Complaints("listening.json", json.Output));
        Assert.Contains("loud", words.Output, StringComparison.OrdinalIgnoreCase); // the caution

        WaveFile heard = WaveFile.Read(await File.ReadAllBytesAsync(wav, TestContext.Current.CancellationToken)).Value!;
        Assert.Equal((48_000, 48_000, 1), (heard.RateHz, heard.Channels[0].Length, heard.Channels.Count));
        JsonElement answer = JsonDocument.Parse(json.Output).RootElement;
        JsonElement[] partials = [.. answer.GetProperty("partials").EnumerateArray()];
        double full = answer.GetProperty("sound").GetProperty("fullScale").GetProperty("value").GetDouble(),
            peak = answer.GetProperty("sound").GetProperty("peak").GetProperty("value").GetDouble();
        Assert.Equal(heard.Channels[0].Max(Math.Abs) * full, peak, 1e-6 * peak);
        foreach (JsonElement partial in partials.Where(one => one.GetProperty("level").GetDouble() > -30))
        {
            double hz = partial.GetProperty("frequency").GetDouble();
            Assert.True(
                Level(heard.Channels[0], hz) > Level(heard.Channels[0], hz + 55) + 10,
                FormattableString.Invariant($"{hz} Hz is not heard")
            );
        }
    }

    [Fact]
    public async Task Two_coils_are_deaf_where_half_a_wave_lies_between_them()
    {
        using TestFolder folder = new();
        CommandRun run = await CommandRun.Of([
            "listen",
            s_twin,
            "--pitch",
            "110Hz",
            "--length",
            "0.2s",
            "--wav",
            folder.PathOf("twin.wav"),
            "--json",
        ]);
        Assert.Equal((0, ""), (run.Exit, run.Error));
        JsonElement answer = JsonDocument.Parse(run.Output).RootElement;
        double[] deaf = [.. answer.GetProperty("notches").GetProperty("aperture").EnumerateArray().Select(one => one.GetDouble())];
        double length = answer.GetProperty("string").GetProperty("length").GetProperty("value").GetDouble();
        // two rows of poles some 18 mm apart: half a wave, stretched a little by the string's stiffness
        Assert.InRange(deaf[0], 2 * length * 110 / 0.042, 2 * length * 110 / 0.032);
    }

    [Fact]
    public async Task A_recording_through_another_pickup_and_back_is_the_recording()
    {
        using TestFolder folder = new();
        string dry = folder.PathOf("dry.wav"),
            twin = folder.PathOf("twin.wav"),
            back = folder.PathOf("back.wav");
        CommandRun[] runs =
        [
            await CommandRun.Of(["listen", s_bridge, "--load", s_player, "--length", "2s", "--wav", dry]),
            await CommandRun.Of(["listen", "--from", s_bridge, "--to", s_twin, "--load", s_player, "--in", dry, "--wav", twin]),
            await CommandRun.Of(["listen", "--from", s_twin, "--to", s_bridge, "--load", s_player, "--in", twin, "--wav", back]),
        ];
        Assert.All(runs, run => Assert.Equal((0, ""), (run.Exit, run.Error)));
        Assert.Contains("undone", runs[1].Output, StringComparison.Ordinal);
        CancellationToken cancel = TestContext.Current.CancellationToken;
        double[] first = WaveFile.Read(await File.ReadAllBytesAsync(dry, cancel)).Value!.Channels[0],
            last = WaveFile.Read(await File.ReadAllBytesAsync(back, cancel)).Value!.Channels[0];
        double[] between = [.. Enumerable.Range(1, 20).Select(n => Level(last, 110 * n) - Level(first, 110 * n))];
        double middle = between.Order().ElementAt(between.Length / 2); // the whole may be softer, so that nothing is cut off
        Assert.All(between, db => Assert.InRange(db - middle, -0.5, 0.5));
    }

    [Fact]
    public async Task Everything_that_is_wrong_is_said_at_once_and_nothing_is_written()
    {
        using TestFolder folder = new();
        string wav = folder.PathOf("none.wav");
        CommandRun pluck = await CommandRun.Of(["listen", s_bridge, "--pitch", "9000Hz", "--pluck", "3m", "--wav", wav]);
        Assert.Equal(2, pluck.Exit);
        Assert.Contains("--pitch", pluck.Error, StringComparison.Ordinal);
        Assert.Contains("--pluck", pluck.Error, StringComparison.Ordinal);
        CommandRun nothing = await CommandRun.Of(["listen", "--from", s_bridge]);
        Assert.Equal(2, nothing.Exit);
        Assert.All(["--to", "--in", "--wav"], option => Assert.Contains(option, nothing.Error, StringComparison.Ordinal));
        CommandRun nowhere = await CommandRun.Of(["listen", s_bridge, "--wav", folder.PathOf("no/such/folder/a.wav")]);
        Assert.Equal(2, nowhere.Exit);
        string silent = folder.PathOf("silent.wav");
        await File.WriteAllBytesAsync(silent, WaveFile.Write(44_100, new double[44_100]), TestContext.Current.CancellationToken);
        CommandRun quiet = await CommandRun.Of(["listen", "--from", s_bridge, "--to", s_twin, "--in", silent, "--wav", wav]);
        Assert.Equal(2, quiet.Exit);
        Assert.Contains("silent", quiet.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(wav));
    }

    /// <summary>Level at a frequency, dB.</summary>
    private static double Level(double[] sound, double hz)
    {
        double real = 0,
            imaginary = 0;
        int length = Math.Min(sound.Length, 24_000);
        for (int i = 0; i < length; i++)
        {
            double window = 0.5 - 0.5 * Math.Cos(2 * Math.PI * i / length),
                turn = 2 * Math.PI * hz * i / 48_000;
            real += window * sound[i] * Math.Cos(turn);
            imaginary += window * sound[i] * Math.Sin(turn);
        }

        return 10 * Math.Log10(real * real + imaginary * imaginary + 1e-30);
    }
}
