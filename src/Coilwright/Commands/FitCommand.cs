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
/// coilwright fit CURVE.csv: R, L, C and eddy branches from a measured curve, with intervals, and what the curve cannot tell. Of several
/// curves behind one exciter, each with its own load, the ratios are fitted.
/// </summary>
public static class FitCommand
{
    /// <summary>Word for a load of a bare pickup.</summary>
    private const string NoLoad = "none";

    public static Command Build(CommandContext desk)
    {
        Argument<string[]> curve = new("CURVE")
        {
            Description =
                "A table: frequency with gain, or with complex impedance (real and imaginary part, or impedance and "
                + "phase); - reads standard input. Several of one pickup behind one exciter are fitted through their ratios",
            Arity = ArgumentArity.OneOrMore,
        };
        Option<string[]> load = new("--load")
        {
            Description =
                "What hung on the pickup while its gain was measured (coilwright.load/1, or none); with several curves one for each, "
                + "in their order",
            HelpName = "LOAD",
            DefaultValueFactory = _ => [],
        };
        Option<bool> exciter = new("--exciter")
        {
            Description = "The source is not flat, or nobody knows: then two curves or more with known loads are needed",
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
        Command command = new("fit", "A pickup's parts from a measured curve") { curve, load, exciter, resistance, eddy, at, lumped, json };
        command.SetAction(
            async (parsed, cancel) =>
            {
                OptionReader typed = new();
                double typedOhm = typed.Quantity(
                    "--resistance",
                    parsed.GetValue(resistance),
                    QuantityKind.Resistance,
                    0.1,
                    1e6,
                    double.NaN
                );
                double? ohm = double.IsNaN(typedOhm) ? null : typedOhm;
                IReadOnlyList<double> atHz = typed.Frequencies("--at", parsed.GetValue(at), 1, 1e6) ?? FitCurve.UsualHz;
                if (parsed.GetValue(eddy) is < 0 or > ImpedanceFit.MostEddy)
                {
                    typed.Add("--eddy", "outside the allowed range", FormattableString.Invariant($"{parsed.GetValue(eddy)}"), "0 to 3");
                }

                if (parsed.GetValue(lumped) && parsed.GetValue(json))
                {
                    typed.Add("--lumped", "choose one of --lumped and --json");
                }

                string[] paths = parsed.GetRequiredValue(curve),
                    loads = parsed.GetValue(load) ?? [];
                CheckCount(typed, paths, loads, parsed.GetValue(exciter), parsed.GetValue(resistance), parsed.GetValue(eddy));
                typed.RefuseIfWrong();
                FitAnswer answer =
                    paths.Length == 1
                        ? await OneAsync(desk, paths[0], loads.FirstOrDefault(), ohm, parsed.GetValue(eddy), atHz, cancel)
                            .ConfigureAwait(false)
                        : await SeveralAsync(desk, paths, loads, parsed.GetValue(eddy), atHz, cancel).ConfigureAwait(false);
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

    private static void CheckCount(OptionReader typed, string[] paths, string[] loads, bool exciter, string? resistance, int? eddy)
    {
        if (paths.Length == 1)
        {
            if (exciter)
            {
                typed.Add(
                    "--exciter",
                    "from one curve behind an unknown source nothing can be told: read the pickup again with another known load and give "
                        + "both",
                    null,
                    "two curves or more, each with its --load"
                );
            }

            if (loads.Length > 1)
            {
                typed.Add("--load", "one curve has one load", FormattableString.Invariant($"{loads.Length} of them"), "1");
            }

            return;
        }

        if (loads.Length != paths.Length)
        {
            typed.Add(
                "--load",
                "each curve needs the load it was read with, in the order of the curves; none for the bare pickup",
                FormattableString.Invariant($"{loads.Length} for {paths.Length} curves"),
                FormattableString.Invariant($"{paths.Length}")
            );
        }

        if (paths.Count(path => path == "-") > 1)
        {
            typed.Add("CURVE", "standard input can be read once", "-");
        }

        if (resistance is not null)
        {
            typed.Add("--resistance", "belongs to a single curve of gain; the ratio of curves tells the resistance itself");
        }

        if (eddy > RatioFit.MostEddy)
        {
            typed.Add(
                "--eddy",
                "outside the allowed range for several curves",
                FormattableString.Invariant($"{eddy}"),
                FormattableString.Invariant($"0 to {RatioFit.MostEddy}")
            );
        }
    }

    private static async Task<FitAnswer> OneAsync(
        CommandContext desk,
        string path,
        string? load,
        double? resistanceOhm,
        int? eddy,
        IReadOnlyList<double> atHz,
        CancellationToken cancel
    )
    {
        CurveTable table = await TableAsync(path, cancel).ConfigureAwait(false);
        LoadCircuit? hung = await LoadAsync(load, cancel).ConfigureAwait(false);
        ReadOutcome<FitAnswer> fitted = desk.Use<FitCurve>().Fit(path, table, hung, resistanceOhm, eddy, atHz);
        return fitted.OrRefuse(fitted.Problems is [{ Field.Length: > 0 }] ? "" : path);
    }

    private static async Task<FitAnswer> SeveralAsync(
        CommandContext desk,
        string[] paths,
        string[] loads,
        int? eddy,
        IReadOnlyList<double> atHz,
        CancellationToken cancel
    )
    {
        List<LoadedCurve> curves = [];
        for (int i = 0; i < paths.Length; i++)
        {
            curves.Add(
                new LoadedCurve(
                    paths[i],
                    await TableAsync(paths[i], cancel).ConfigureAwait(false),
                    await LoadAsync(loads[i], cancel).ConfigureAwait(false) ?? LoadCircuit.None
                )
            );
        }

        return desk.Use<FitCurves>().Fit(curves, eddy, atHz).OrRefuse("");
    }

    private static async Task<CurveTable> TableAsync(string path, CancellationToken cancel) =>
        CurveTable.Read(await InputFile.ReadAsync(path, cancel).ConfigureAwait(false)).OrRefuse(path);

    private static async Task<LoadCircuit?> LoadAsync(string? load, CancellationToken cancel) =>
        load == NoLoad ? null : await RecipeFile.ReadLoadAsync(load, cancel).ConfigureAwait(false);

    /// <exception cref="WrongInputException">When no winding can have what was fitted.</exception>
    internal static void RefuseUnlessWinding(FitAnswer answer)
    {
        if (!answer.IsWinding)
        {
            throw new WrongInputException(answer.Path, [new Problem("", answer.NoResult)]);
        }
    }
}
