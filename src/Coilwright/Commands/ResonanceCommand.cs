using System.CommandLine;
using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>
/// coilwright resonance: inductance and own capacitance from resonances with known capacitors added, and a meter's inductance freed of the
/// capacitance.
/// </summary>
public static partial class ResonanceCommand
{
    public static Command Build(CommandContext desk)
    {
        Option<string[]> peak = new("--peak")
        {
            Description = "A resonance: 9.19kHz for the bare pickup, 470pF:4.14kHz with a capacitor added; at least two",
            HelpName = "[CAPACITOR:]FREQUENCY",
            AllowMultipleArgumentsPerToken = true,
        };
        Option<string?> tolerance = new("--tolerance")
        {
            Description = "Uncertainty of the added capacitors (95 %); 1 % unless said, as after measuring them",
            HelpName = "PERCENT",
        };
        Option<string?> resistance = new("--resistance")
        {
            Description = "The winding's DC resistance: moves the tops of damped gain curves up to the true resonance",
            HelpName = "OHMS",
        };
        Option<string?> inductance = new("--inductance") { Description = "An inductance by meter, with --at", HelpName = "HENRIES" };
        Option<string?> at = new("--at") { Description = "Frequency of the meter; 1 kHz unless said", HelpName = "FREQUENCY" };
        Option<bool> json = new("--json") { Description = "Write coilwright.resonance/1" };
        Command command = new("resonance", "Inductance and capacitance from resonances with known capacitors")
        {
            peak,
            tolerance,
            resistance,
            inductance,
            at,
            json,
        };
        command.SetAction(
            async (parsed, _) =>
            {
                OptionReader typed = new();
                double relative = typed.Quantity("--tolerance", parsed.GetValue(tolerance), QuantityKind.Fraction, 0, 0.3, 0.01);
                double ohm = typed.Quantity("--resistance", parsed.GetValue(resistance), QuantityKind.Resistance, 0.1, 1e6, double.NaN);
                double henry = typed.Quantity("--inductance", parsed.GetValue(inductance), QuantityKind.Inductance, 1e-6, 1e3, double.NaN);
                double atHz = typed.Quantity("--at", parsed.GetValue(at), QuantityKind.Frequency, 1, 1e6, 1000);
                ResonanceReading[] readings = [.. (parsed.GetValue(peak) ?? []).Select(one => Reading(typed, one, relative))];
                Check(typed, readings);
                typed.RefuseIfWrong();
                AddedCapacitors solved = AddedCapacitors.Solve(readings, double.IsNaN(ohm) ? null : ohm);
                if (solved.Inductance.Value <= 0 || solved.Capacitance.Value <= 0)
                {
                    throw WrongInputException.About(
                        "--peak",
                        "no pickup has these resonances: they would need a capacitance of its own below nothing",
                        "a lower resonance with a larger capacitor"
                    );
                }

                ResonanceAnswer answer = new(
                    solved,
                    1 / (2 * Math.PI * Math.Sqrt(solved.Inductance.Value * solved.Capacitance.Value)),
                    double.IsNaN(henry) ? null : (henry, atHz)
                );
                await desk
                    .Output.WriteLineAsync(parsed.GetValue(json) ? ResonanceJson.Write(answer) : ResonanceFormatter.Write(answer))
                    .ConfigureAwait(false);
                return answer.IsRefused ? ExitCode.AnswerIsNo : ExitCode.Done;
            }
        );
        return command;
    }

    private static ResonanceReading Reading(OptionReader typed, string text, double relative)
    {
        string[] parts = text.Split(':');
        string frequency = parts[^1].Trim();
        double added = parts.Length == 2 ? typed.Quantity("--peak", parts[0].Trim(), QuantityKind.Capacitance, 1e-12, 1e-6, 0) : 0;
        double hz = typed.Quantity("--peak", frequency, QuantityKind.Frequency, 10, 1e6, 0);
        if (parts.Length > 2)
        {
            typed.Add("--peak", $"\"{text}\" is not a capacitor and a frequency", null, "470pF:4.14kHz");
        }

        return new ResonanceReading(added, added * relative / Physics.Estimate.Sigmas95, hz, LastDigit(frequency, hz) / (2 * Math.Sqrt(3)));
    }

    /// <summary>One unit of the last digit typed, Hz: the reading lies evenly within half of it either way.</summary>
    private static double LastDigit(string frequency, double hz)
    {
        Match match = Digits().Match(frequency);
        if (
            !match.Success
            || !double.TryParse(
                match.Groups[1].Value + "." + match.Groups[2].Value,
                NumberStyles.Float,
                CultureInfo.InvariantCulture,
                out double number
            )
            || number <= 0
        )
        {
            return hz * 0.001;
        }

        return hz / number * Math.Pow(10, -match.Groups[2].Length);
    }

    private static void Check(OptionReader typed, ResonanceReading[] readings)
    {
        if (readings.Select(reading => reading.AddedF).Distinct().Count() < 2)
        {
            typed.Add(
                "--peak",
                "two resonances with different capacitors are needed, one of which may be the bare pickup's",
                null,
                "--peak 9.19kHz 470pF:4.14kHz"
            );
            return;
        }

        ResonanceReading[] sorted = [.. readings.OrderBy(reading => reading.AddedF)];
        for (int i = 1; i < sorted.Length; i++)
        {
            if (sorted[i].AddedF > sorted[i - 1].AddedF && sorted[i].ResonanceHz >= sorted[i - 1].ResonanceHz)
            {
                typed.Add(
                    "--peak",
                    "a larger capacitor must lower the resonance",
                    $"{QuantityParser.Format(sorted[i].ResonanceHz, QuantityKind.Frequency)} with "
                        + $"{QuantityParser.Format(sorted[i].AddedF, QuantityKind.Capacitance)}"
                );
            }
        }
    }

    [GeneratedRegex(@"^\s*(\d+)(?:[.,kM](\d+))?", RegexOptions.CultureInvariant)]
    private static partial Regex Digits();
}
