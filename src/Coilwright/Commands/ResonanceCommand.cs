using System.CommandLine;
using Coilwright.Application.Measuring;
using Coilwright.Formats.Curves;
using Coilwright.Input;
using Coilwright.Output;

namespace Coilwright.Commands;

/// <summary>
/// coilwright resonance: inductance and own capacitance from resonances with known capacitors added, and a meter's inductance freed of the
/// capacitance.
/// </summary>
public static class ResonanceCommand
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
                ResonanceQuestion asked = new([.. (parsed.GetValue(peak) ?? []).Select(PeakOf)])
                {
                    Tolerance = parsed.GetValue(tolerance) ?? "",
                    Resistance = parsed.GetValue(resistance) ?? "",
                    Inductance = parsed.GetValue(inductance) ?? "",
                    At = parsed.GetValue(at) ?? "",
                };
                ResonanceAnswer answer = desk.Use<SolveResonances>()
                    .Solve(asked, unitRequired: true)
                    .OrRefuseOptions(field => field.StartsWith("peaks", StringComparison.Ordinal) ? "--peak" : "--" + field)
                    .Answer;
                await desk
                    .Output.WriteLineAsync(parsed.GetValue(json) ? ResonanceJson.Write(answer) : ResonanceFormatter.Write(answer))
                    .ConfigureAwait(false);
                return answer.IsRefused ? ExitCode.AnswerIsNo : ExitCode.Done;
            }
        );
        return command;
    }

    private static TypedPeak PeakOf(string text)
    {
        string[] parts = text.Split(':');
        if (parts.Length > 2)
        {
            throw WrongInputException.About("--peak", $"\"{text}\" is not a capacitor and a frequency", "470pF:4.14kHz");
        }

        return new TypedPeak(parts.Length == 2 ? parts[0] : "", parts[^1]);
    }
}
