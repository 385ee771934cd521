using Coilwright.Physics;

namespace Coilwright.Analysis.Originals;

/// <summary>From weighted draws to probabilities, intervals, the next reading and warnings.</summary>
internal sealed class OriginalReport
{
    /// <summary>Explanations less probable than this are not told.</summary>
    private const double Least = 1e-3;

    /// <summary>A wire that as a rule does not fit is told as such below this probability.</summary>
    private const double Unlikely = 0.03;

    /// <summary>Effective draws below which an explanation's interval is not to be trusted.</summary>
    private const double FewestEffective = 60;

    private readonly OriginalQuestion _question;
    private readonly Posterior[] _posteriors;
    private readonly double[] _wire;
    private readonly double[] _core;
    private readonly double[][] _weights;
    private readonly List<string> _warnings = [];

    public OriginalReport(OriginalQuestion question, Posterior[] posteriors, CoreTable[] tables, double[] frequencies)
    {
        (_question, _posteriors) = (question, posteriors);
        double top = posteriors.Max(posterior => posterior.Largest);
        Contradiction = !double.IsFinite(top);
        _weights = new double[posteriors.Length][];
        _core = new double[question.Cores.Count];
        _wire = new double[posteriors.Length];
        for (int w = 0; w < posteriors.Length; w++)
        {
            _weights[w] = new double[posteriors[w].Drawn.Length];
            for (int k = 0; k < _weights[w].Length && !Contradiction; k++)
            {
                for (int m = 0; m < _core.Length; m++)
                {
                    double weight = Math.Exp(posteriors[w].LogWeight[k, m] - top);
                    _weights[w][k] += weight;
                    _core[m] += weight;
                }
            }

            _wire[w] = _weights[w].Sum();
        }

        double all = _wire.Sum();
        Contradiction |= !(all > 0);
        if (!Contradiction)
        {
            Scale(_wire, all);
            Scale(_core, all);
            Array.ForEach(_weights, weights => Scale(weights, all));
            CheckAgreement(tables, frequencies);
        }
    }

    private bool Contradiction { get; }

    public OriginalAnswer Answer()
    {
        if (Contradiction)
        {
            return new OriginalAnswer
            {
                Explanations = [.. Impossible([])],
                Shares = new Dictionary<string, IReadOnlyDictionary<string, double>>(),
                Quantities = new Dictionary<string, Estimate>(),
                NextReadings = [],
                Converged = true,
                Warnings = ["no wire explains these readings together; read them again, the first of all in its unit"],
            };
        }

        int[] told = [.. Enumerable.Range(0, _wire.Length).Where(w => _wire[w] >= (IsTooThick(w) ? Unlikely : Least)).OrderByDescending(w => _wire[w])];
        Explanation[] explanations = [.. told.Select(Told)];
        return new OriginalAnswer
        {
            Explanations = [.. explanations, .. Impossible(told)],
            Shares = Shares(),
            Quantities = new Dictionary<string, Estimate>
            {
                ["turns"] = Over(winding => winding.Turns),
                ["bareDiameter"] = Over(winding => winding.BareM),
                ["overallDiameter"] = Over(winding => winding.OverallM),
                ["windingBuild"] = Over(winding => winding.BuildM),
            },
            NextReadings = NextReadingChoice.Of(_question, _posteriors, _weights),
            Converged = Converged(told),
            Warnings = _warnings,
        };
    }

    private Explanation Told(int w) => new(
        _question.Wires[w].Gauge, _question.Wires[w].Build, _wire[w], Within(w, winding => winding.Turns), Within(w, winding => winding.BareM), Fits: true);

    /// <summary>True when a winding of this wire with the resistance read would as a rule be thicker than the room.</summary>
    private bool IsTooThick(int w)
    {
        PossibleWinding[] drawn = [.. _posteriors[w].Drawn.Where(winding => winding.Turns > 0)];
        return drawn.Length > 0 && drawn.Average(winding => winding.BuildM) > (_question.Cores[0].Model.Coils[0].Bobbin.MaxBuildM ?? double.PositiveInfinity);
    }

    /// <summary>Usual wires that the resistance alone would allow, but which leave no probability: most often because they do not fit.</summary>
    private IEnumerable<Explanation> Impossible(int[] told)
    {
        double? roomM = _question.Cores[0].Model.Coils[0].Bobbin.MaxBuildM;
        for (int w = 0; w < _wire.Length && roomM is not null; w++)
        {
            PossibleWinding[] drawn = [.. _posteriors[w].Drawn.Where(winding => winding.Turns > 0)];
            if (told.Contains(w) || _question.Wires[w].Prior < 0.04 || !IsTooThick(w))
            {
                continue;
            }

            double[] even = [.. drawn.Select(_ => 1.0)];
            yield return new Explanation(
                _question.Wires[w].Gauge, _question.Wires[w].Build, _wire[w], Weighted([.. drawn.Select(winding => winding.Turns)], even), Weighted([.. drawn.Select(winding => winding.BareM)], even), Fits: false);
        }
    }

    private Dictionary<string, IReadOnlyDictionary<string, double>> Shares()
    {
        IReadOnlyDictionary<string, double> By(Func<int, string> key) => Enumerable.Range(0, _wire.Length).GroupBy(key)
            .Select(group => (group.Key, Share: group.Sum(w => _wire[w]))).Where(pair => pair.Share >= Least).OrderByDescending(pair => pair.Share).ToDictionary(pair => pair.Key, pair => pair.Share);
        Dictionary<string, IReadOnlyDictionary<string, double>> shares = new() { ["gauge"] = By(w => _question.Wires[w].Gauge), ["build"] = By(w => _question.Wires[w].Build) };
        if (_core.Length > 1)
        {
            shares["material"] = _question.Cores.Select((core, m) => (core.Material, Share: _core[m])).Where(pair => pair.Share >= Least).OrderByDescending(pair => pair.Share).ToDictionary(pair => pair.Material, pair => pair.Share);
        }

        return shares;
    }

    private Estimate Within(int w, Func<PossibleWinding, double> of) => Weighted([.. _posteriors[w].Drawn.Select(of)], _weights[w]);

    private Estimate Over(Func<PossibleWinding, double> of) => Weighted([.. _posteriors.SelectMany(posterior => posterior.Drawn.Select(of))], [.. _weights.SelectMany(weights => weights)]);

    /// <summary>Median with the 2.5 and 97.5 % points of a weighted draw.</summary>
    private static Estimate Weighted(double[] values, double[] weights)
    {
        double[] sorted = [.. values], carried = [.. weights];
        Array.Sort(sorted, carried);
        double all = carried.Sum();
        double Point(double fraction)
        {
            double sum = 0;
            for (int k = 0; k < sorted.Length; k++)
            {
                sum += carried[k];
                if (sum >= fraction * all && carried[k] > 0)
                {
                    return sorted[k];
                }
            }

            return sorted[^1];
        }

        return new Estimate(Point(0.5), Point(0.025), Point(0.975), Basis.Forecast);
    }

    /// <summary>Two halves of the draw agree within three points, and the likely explanations rest on enough draws.</summary>
    private bool Converged(int[] told)
    {
        bool enough = told.Where(w => _wire[w] > 0.05).All(w => 1 / _weights[w].Sum(weight => weight * weight / (_wire[w] * _wire[w])) >= FewestEffective);
        double Half(int w, int start) => _weights[w].Where((_, k) => k % 2 == start).Sum();
        double first = told.Sum(w => Half(w, 0)), second = told.Sum(w => Half(w, 1));
        bool agree = told.All(w => Math.Abs(Half(w, 0) / first - Half(w, 1) / second) < 0.06);
        if (!enough || !agree)
        {
            _warnings.Add("the sampling has not settled: take the probabilities with a few points either way");
        }

        return enough && agree;
    }

    /// <summary>Warns when even the best draw leaves a reading far from what it says.</summary>
    private void CheckAgreement(CoreTable[] tables, double[] frequencies)
    {
        int w = Array.IndexOf(_wire, _wire.Max()), k = Array.IndexOf(_weights[w], _weights[w].Max());
        PossibleWinding winding = _posteriors[w].Drawn[k];
        foreach (OriginalReading reading in _question.Readings)
        {
            double? value = reading.Quantity switch
            {
                "overallDiameter" => winding.OverallM,
                "bareDiameter" => winding.BareM,
                "build" => winding.BuildM,
                "meanTurnLength" => winding.MeanTurnM,
                "turns" => winding.Turns,
                "inductance" when tables.Length > 0 => winding.Turns * winding.Turns * tables.MinBy(table => Math.Abs(At(table, reading) - reading.Value))!.PerTurn(Array.IndexOf(frequencies, reading.AtHz), winding.BuildM),
                _ => null,
            };
            double slack = reading.Quantity == "inductance" && tables.Length > 0 ? tables.Max(table => table.Spread(winding.BuildM)) * reading.Value : 0;
            if (value is { } found && Math.Abs(found - reading.Value) > 2 * (reading.Half + slack))
            {
                _warnings.Add($"the reading of {reading.Quantity} lies far from what the best explanation gives; read it again");
            }
        }

        double At(CoreTable table, OriginalReading reading) => winding.Turns * winding.Turns * table.PerTurn(Array.IndexOf(frequencies, reading.AtHz), winding.BuildM);
    }

    private static void Scale(double[] values, double by)
    {
        for (int k = 0; k < values.Length; k++)
        {
            values[k] /= by;
        }
    }
}
