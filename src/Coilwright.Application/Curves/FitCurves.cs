using System.Globalization;
using Coilwright.Analysis.Curves;
using Coilwright.Formats.Curves;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Curves;

/// <summary>One curve of a pickup, and what hung on it.</summary>
/// <param name="Path">What it is called.</param>
/// <param name="Table">The curve as read.</param>
/// <param name="Load">Its load; one without parts for the bare pickup.</param>
public sealed record LoadedCurve(string Path, CurveTable Table, LoadCircuit Load);

/// <summary>A person wants a pickup's parts from several curves behind one exciter, each with a known load.</summary>
public sealed class FitCurves
{
    /// <summary>Fewest points between the ends that the fit looks at.</summary>
    private const int FewestPoints = 20;

    /// <summary>Fits the ratios of the curves to the first; a problem carries the name of the curve it belongs to.</summary>
    /// <param name="curves">Two curves or more.</param>
    /// <param name="eddy">Eddy branches; null lets the curves decide.</param>
    /// <param name="atHz">Frequencies at which the inductance is told.</param>
    public ReadOutcome<FitAnswer> Fit(IReadOnlyList<LoadedCurve> curves, int? eddy, IReadOnlyList<double> atHz)
    {
        List<Problem> problems = [.. curves.SelectMany(Wrong)];
        problems.AddRange(problems.Count > 0 ? [] : curves.Skip(1).SelectMany(one => WrongBeside(curves[0], one)));
        if (problems.Count > 0)
        {
            return new ReadOutcome<FitAnswer>(null, problems);
        }

        CurveRatio[] ratios =
        [
            .. curves.Skip(1).Select(one => CurveRatio.Of(curves[0].Table.Curve, curves[0].Load, one.Table.Curve, one.Load)),
        ];
        LoadedCurve[] alike = [.. curves.Skip(1).Where((_, at) => ratios[at].Impedance().Count < ImpedanceFit.FewestPoints)];
        if (alike.Length > 0)
        {
            return new ReadOutcome<FitAnswer>(
                null,
                [
                    .. alike.Select(one => new Problem(
                        one.Path,
                        "is the first curve again at nearly every frequency: its load changes nothing that was read"
                    )),
                ]
            );
        }

        RatioFit found = RatioFit.Find(ratios, eddy);
        string[] faults =
        [
            .. PossibleWinding.PartFaults(found.Fit),
            .. found.Contradicting.Select(at => Contradiction(curves[at + 1].Path, found.MissedDb[at])),
        ];
        FitAnswer answer =
            faults.Length > 0
                ? new FitAnswer(curves[0].Path, curves[0].Table, found.Fit, null, []) { Faults = faults }
                : new FitAnswer(
                    curves[0].Path,
                    curves[0].Table,
                    found.Fit,
                    ImpedanceResonance.Find(found.Fit.Pickup),
                    [.. atHz.Select(hz => FitCurve.Inductance(found.Fit, hz))]
                );
        return new ReadOutcome<FitAnswer>(
            answer with
            {
                Ratios = [.. curves.Skip(1).Select((one, at) => new RatioAnswer(one.Path, found.MissedDb[at], found.MovedDb[at]))],
            },
            []
        );
    }

    private static string Contradiction(string path, double missedDb) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Path.GetFileName(path)} over the first curve is missed by {missedDb:0.0} dB; up to {RatioFit.MostMissedDb:0} dB would do"
        );

    private static IEnumerable<Problem> Wrong(LoadedCurve one)
    {
        MeasuredCurve curve = one.Table.Curve;
        if (curve.GainDb is null)
        {
            yield return new Problem(one.Path, "holds an impedance; several curves are fitted through the ratios of their gains");
            yield break;
        }

        if (curve.PhaseDegrees is null)
        {
            yield return new Problem(one.Path, "has no phase: a ratio of curves needs gain and phase");
        }

        int inside = curve.FrequenciesHz.Count(hz => hz is >= CurveRatio.FromHz and <= CurveRatio.ToHz);
        if (inside < FewestPoints)
        {
            yield return new Problem(
                one.Path,
                "has too few points where a pickup is told",
                string.Create(CultureInfo.InvariantCulture, $"{inside} of them"),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"at least {FewestPoints} from {CurveRatio.FromHz:0} Hz to {CurveRatio.ToHz / 1000:0} kHz"
                )
            );
        }

        if (!LoadAdmittance.IsAcross(one.Load))
        {
            yield return new Problem(
                one.Path,
                "its load does not hang straight across the pickup: a volume control must be full, and nothing may amplify",
                null,
                "tone control, cable and input; volume at 1"
            );
        }
    }

    private static IEnumerable<Problem> WrongBeside(LoadedCurve first, LoadedCurve one)
    {
        if (!CurveRatio.OneGrid(first.Table.Curve, one.Table.Curve))
        {
            yield return new Problem(one.Path, $"was not read at the frequencies of {Path.GetFileName(first.Path)}");
        }

        if (one.Load == first.Load)
        {
            yield return new Problem(one.Path, $"has the load of {Path.GetFileName(first.Path)}: a ratio tells something only between two");
        }
    }
}
