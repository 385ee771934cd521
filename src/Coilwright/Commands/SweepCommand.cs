using System.CommandLine;
using System.Globalization;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Curves;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Sound;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>coilwright sweep make / read: a measurement signal, and the impedance or response and the parts from its recording.</summary>
public static class SweepCommand
{
    public static Command Build(CommandContext desk) =>
        new("sweep", "A measurement signal, and what its recording says of a pickup") { Make(desk), Read(desk) };

    private sealed record Signal(Option<string?> From, Option<string?> To, Option<string?> Length)
    {
        public static Signal Options() =>
            new(
                new("--from") { Description = "First frequency; 20 Hz unless said", HelpName = "FREQUENCY" },
                new("--to") { Description = "Last frequency; 20 kHz unless said", HelpName = "FREQUENCY" },
                new("--length") { Description = "Length; 10 s unless said", HelpName = "TIME" }
            );

        public SignalQuestion Of(ParseResult parsed) =>
            new(parsed.GetValue(From) ?? "", parsed.GetValue(To) ?? "", parsed.GetValue(Length) ?? "");
    }

    private static Command Make(CommandContext desk)
    {
        Argument<string> file = new("FILE") { Description = "The WAV file to write" };
        Signal signal = Signal.Options();
        Option<int> rate = new Option<int>("--rate") { Description = "Samples per second", DefaultValueFactory = _ => 48_000 }.AsCount();
        Command command = new("make", "Write the measurement signal") { file, signal.From, signal.To, signal.Length, rate };
        command.SetAction(
            async (parsed, cancel) =>
            {
                int samples = parsed.GetValue(rate);
                MadeSignal made = desk.Use<MakeSignal>()
                    .Make(signal.Of(parsed), samples, unitRequired: true)
                    .OrRefuseOptions(field => "--" + field);
                LogSweep sweep = made.Sweep;
                string path = parsed.GetRequiredValue(file);
                try
                {
                    await File.WriteAllBytesAsync(path, made.Wave, cancel).ConfigureAwait(false);
                }
                catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
                {
                    throw new WrongInputException(path, [new Problem("", "this file cannot be written: " + failure.Message)]);
                }

                await desk
                    .Output.WriteLineAsync(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"{path}: {sweep.FromHz} Hz to {sweep.ToHz} Hz in {sweep.LengthS} s at {samples} samples a second, half of "
                                + $"full scale. Play it softly; record at least one second longer."
                        )
                    )
                    .ConfigureAwait(false);
                return ExitCode.Done;
            }
        );
        return command;
    }

    private static Command Read(CommandContext desk)
    {
        Argument<string> file = new("RECORDING")
        {
            Description = "A WAV file of two channels: before the resistor, and at the joint of resistor and pickup",
        };
        Signal signal = Signal.Options();
        Option<string> resistor = new("--resistor")
        {
            Description = "The resistor between the two, as measured",
            HelpName = "OHMS",
            Required = true,
        };
        Option<string?> input = new("--input-resistance") { Description = "Input resistance of the second channel", HelpName = "OHMS" };
        Option<string?> capacitance = new("--input-capacitance")
        {
            Description = "Capacitance of the second channel and its leads",
            HelpName = "FARADS",
        };
        Option<bool> csv = new("--csv") { Description = "Write the impedance as a table" },
            lumped = new("--lumped") { Description = "Write the pickup alone (coilwright.lumped/1)" },
            json = new("--json") { Description = "Write coilwright.fit/1" };
        Command command = new("read", "Impedance and parts from a recording of the signal")
        {
            file,
            signal.From,
            signal.To,
            signal.Length,
            resistor,
            input,
            capacitance,
            csv,
            lumped,
            json,
        };
        command.SetAction(
            async (parsed, cancel) =>
            {
                string path = parsed.GetRequiredValue(file);
                RecordingQuestion asked = new(
                    path,
                    await BytesAsync(path, cancel).ConfigureAwait(false),
                    signal.Of(parsed),
                    parsed.GetValue(resistor) ?? ""
                )
                {
                    InputResistance = parsed.GetValue(input) ?? "",
                    InputCapacitance = parsed.GetValue(capacitance) ?? "",
                };
                ReadOutcome<FitAnswer> fitted = desk.Use<FitRecording>().Fit(asked, unitRequired: true);
                FitAnswer answer = fitted.Problems.Any(problem => problem.Field.Length > 0)
                    ? fitted.OrRefuseOptions(OptionOf)
                    : fitted.OrRefuse(path);
                if (parsed.GetValue(lumped))
                {
                    FitCommand.RefuseUnlessWinding(answer);
                }

                if (parsed.GetValue(csv))
                {
                    await desk.Output.WriteAsync(ImpedanceCsv.Write(answer.Table.Curve)).ConfigureAwait(false);
                    return ExitCode.Done;
                }

                string words = (parsed.GetValue(lumped), parsed.GetValue(json)) switch
                {
                    (true, _) => FitJson.Lumped(answer),
                    (_, true) => FitJson.Write(answer),
                    _ => FitFormatter.Write(answer),
                };
                await desk.Output.WriteLineAsync(words).ConfigureAwait(false);
                return answer.IsWinding ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    private static string OptionOf(string field) =>
        field switch
        {
            "inputResistance" => "--input-resistance",
            "inputCapacitance" => "--input-capacitance",
            "" => "RECORDING",
            _ => "--" + field,
        };

    /// <summary>Ten minutes of two channels at 96,000 samples a second and four bytes.</summary>
    private const long LongestRecording = 461_000_000;

    private static async Task<byte[]> BytesAsync(string path, CancellationToken cancel)
    {
        return await InputFile.ReadBytesAsync(path, LongestRecording, cancel).ConfigureAwait(false);
    }
}
