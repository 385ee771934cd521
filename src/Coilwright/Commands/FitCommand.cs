using System.CommandLine;
using Coilwright.Analysis.Curves;
using Coilwright.Application.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Input;
using Coilwright.Output;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Commands;

/// <summary>
/// coilwright fit CURVE.csv: R, L, C and eddy branches from a measured curve, with intervals, and what the curve cannot tell.
/// </summary>
public static class FitCommand
{
    public static Command Build(CommandContext desk)
    {
        Argument<string> curve = new("CURVE")
        {
            Description =
                "A table: frequency with gain, or with complex impedance (real and imaginary part, or impedance and "
                + "phase); - reads standard input",
        };
        Option<string?> load = new("--load")
        {
            Description = "What hung on the pickup while its gain was measured (coilwright.load/1)",
            HelpName = "LOAD",
        };
        Option<string?> resistance = new("--resistance")
        {
            Description = "The winding's DC resistance by meter: with it a gain curve tells inductance from capacitance",
            HelpName = "OHMS",
        };
        Option<int?> eddy = new Option<int?>("--eddy")
        {
            Description = "Eddy branches to fit, 0 to 3; the curve decides unless said",
        }.AsCount();
        Option<string?> at = new("--at")
        {
            Description = "Frequencies at which the inductance is told; 120Hz,1kHz unless said",
            HelpName = "FREQUENCIES",
        };
        Option<bool> lumped = new("--lumped") { Description = "Write the pickup alone (coilwright.lumped/1), for respond" },
            json = new("--json") { Description = "Write coilwright.fit/1" };
        Command command = new("fit", "A pickup's parts from a measured curve") { curve, load, resistance, eddy, at, lumped, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                double ohm = typed.Quantity("--resistance", parsed.GetValue(resistance), QuantityKind.Resistance, 0.1, 1e6, double.NaN);
                IReadOnlyList<double> atHz = typed.Frequencies("--at", parsed.GetValue(at), 1, 1e6) ?? FitCurve.UsualHz;
                if (parsed.GetValue(eddy) is < 0 or > ImpedanceFit.MostEddy)
                {
                    typed.Add("--eddy", "outside the allowed range", FormattableString.Invariant($"{parsed.GetValue(eddy)}"), "0 to 3");
                }

                if (parsed.GetValue(lumped) && parsed.GetValue(json))
                {
                    typed.Add("--lumped", "choose one of --lumped and --json");
                }

                typed.RefuseIfWrong();
                string path = parsed.GetRequiredValue(curve);
                CurveTable table = CurveTable.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);
                LoadCircuit? hung = await RecipeFile.ReadLoadAsync(parsed.GetValue(load), cancel).ConfigureAwait(false);
                ReadOutcome<FitAnswer> fitted = desk.Use<FitCurve>()
                    .Fit(path, table, hung, double.IsNaN(ohm) ? null : ohm, parsed.GetValue(eddy), atHz);
                FitAnswer answer = fitted.OrRefuse(fitted.Problems is [{ Field.Length: > 0 }] ? "" : path);
                if (parsed.GetValue(lumped))
                {
                    RefuseUnlessWinding(answer);
                    await desk.Output.WriteLineAsync(FitJson.Lumped(answer)).ConfigureAwait(false);
                }
                else if (parsed.GetValue(json))
                {
                    await desk.Output.WriteLineAsync(FitJson.Write(answer)).ConfigureAwait(false);
                }
                else
                {
                    FitFormatter.Write(desk.Output, answer);
                }

                return answer.IsWinding ? ExitCode.Done : ExitCode.AnswerIsNo;
            }
        );
        return command;
    }

    /// <exception cref="WrongInputException">When no winding can have what was fitted.</exception>
    internal static void RefuseUnlessWinding(FitAnswer answer)
    {
        if (!answer.IsWinding)
        {
            throw new WrongInputException(answer.Path, [new Problem("", answer.NoResult)]);
        }
    }
}
