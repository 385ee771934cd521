using System.Globalization;
using Coilwright.Application.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Measuring;

namespace Coilwright.Application.Measuring;

/// <summary>A person wants a pickup's parts from the curves that were handed in.</summary>
public sealed class FitSentCurves(FitCurve one, FitCurves several)
{
    /// <summary>Problems of one table that are told; a table of another kind has as many as lines.</summary>
    private const int MostOfOneTable = 8;

    /// <summary>The fit, or every problem by its field: "curves[0].file", "curves[1].capacitance", "resistance".</summary>
    public ReadOutcome<FittedCurve> Fit(FitQuestion asked)
    {
        QuantityReader typed = new(unitRequired: false);
        double? ohm = typed.Read("resistance", asked.Resistance, MeasureLimits.Winding);
        (int Place, LoadedCurve? Curve)[] read =
        [
            .. asked.Curves.Index().Where(sent => !sent.Item.IsEmpty).Select(sent => (sent.Index, Read(typed, asked.Curves, sent.Index))),
        ];
        if (read.Length == 0)
        {
            typed.Add(new Problem("curves[0].file", "choose the file of a curve, or paste one", null, "one curve or more"));
        }

        if (read.Length > 1 && ohm is not null)
        {
            typed.Add(new Problem("resistance", "belongs to a single curve of gain; the ratio of curves tells the resistance itself"));
        }

        if (typed.Problems.Count > 0)
        {
            return new ReadOutcome<FittedCurve>(null, typed.Problems);
        }

        LoadedCurve[] curves = [.. read.Select(pair => pair.Curve!)];
        ReadOutcome<FitAnswer> fitted =
            curves.Length == 1
                ? one.Fit(curves[0].Path, curves[0].Table, Hung(curves[0].Load), ohm, eddy: null, FitCurve.UsualHz)
                : several.Fit(curves, eddy: null, FitCurve.UsualHz);
        return fitted.Value is { } answer
            ? new ReadOutcome<FittedCurve>(FittedCurve.Of(answer, curves), [])
            : new ReadOutcome<FittedCurve>(null, [.. fitted.Problems.Select(problem => problem with { Field = FieldOf(problem, read) })]);
    }

    private static LoadCircuit? Hung(LoadCircuit load) => load == LoadCircuit.None ? null : load;

    private static string FieldOf(Problem problem, (int Place, LoadedCurve? Curve)[] read)
    {
        int place = read.FirstOrDefault(pair => pair.Curve!.Path == problem.Field, read[0]).Place;
        return problem.Field switch
        {
            "--resistance" => "resistance",
            "--load" => Field(place, "capacitance"),
            _ => Field(place, "file"),
        };
    }

    private static LoadedCurve? Read(QuantityReader typed, IReadOnlyList<SentCurve> all, int place)
    {
        SentCurve sent = all[place];
        double? farad = typed.Read(Field(place, "capacitance"), sent.Capacitance, MeasureLimits.HungCapacitance),
            ohm = typed.Read(Field(place, "resistance"), sent.Resistance, MeasureLimits.HungResistance);
        if (sent.Text.Trim().Length == 0)
        {
            typed.Add(new Problem(Field(place, "file"), "a load was given without its curve", null, "the file of the curve"));
            return null;
        }

        ReadOutcome<CurveTable> table = CurveTable.Read(sent.Text);
        foreach (Problem problem in table.Problems.Take(MostOfOneTable))
        {
            string where = problem.Field.Length > 0 ? problem.Field + ": " : "";
            typed.Add(problem with { Field = Field(place, "file"), Message = where + problem.Message });
        }

        LoadCircuit load = new() { CableCapacitanceF = farad ?? 0, InputResistanceOhm = ohm };
        return table.Value is null ? null : new LoadedCurve(NameOf(all, place), table.Value, load);
    }

    /// <summary>The curve's name, told from others of the same name by its place.</summary>
    private static string NameOf(IReadOnlyList<SentCurve> all, int place)
    {
        string name = all[place].Name.Length > 0 ? all[place].Name : "curve";
        bool alone = all.Count(other => !other.IsEmpty && other.Name == all[place].Name) == 1;
        return alone ? name : string.Create(CultureInfo.InvariantCulture, $"{name} ({place + 1})");
    }

    private static string Field(int place, string name) => string.Create(CultureInfo.InvariantCulture, $"curves[{place}].{name}");
}
