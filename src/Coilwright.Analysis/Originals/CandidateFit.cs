using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Uncertainty;
using Coilwright.Physics;
using Coilwright.Physics.Wire;
using MathNet.Numerics.LinearAlgebra;

namespace Coilwright.Analysis.Originals;

/// <summary>One candidate fitted to the readings: turns and everything that scatters, with their joint normal approximation.</summary>
/// <remarks>
/// Least squares over u (standard deviations of each input from its middle, prior normal) and t = ln turns (prior ln 7,000 ± 0.45: 5,000 to
/// 10,000 turns
/// are common practice, no source), in Gauss–Newton steps; the evidence is Laplace's approximation, exact for a linear model. The field is
/// solved again
/// when the turns have moved by more than 3 %.
/// </remarks>
internal sealed class CandidateFit
{
    public const double UsualTurns = 7000;
    private const double TurnsSpread = 0.45;
    private const double Moved = 0.03;
    private const int MostScenes = 5;

    /// <summary>
    /// Standard deviations by which a real coil departs from the model beyond its lengths' own intervals: of resistance and lengths, and
    /// of inductance. Assumed.
    /// </summary>
    private const double LengthError = 0.003,
        InductanceError = 0.008;

    /// <summary>How softly the room for the winding ends.</summary>
    private const double RoomError = 0.03;

    private readonly OriginalReading[] _readings;
    private readonly PickupModel _start;
    private readonly double[] _ratio;
    private ForecastScene _scene = null!;
    private ForecastInputs _inputs = null!;
    private ForecastVector _vector = null!;
    private int[] _free = [];
    private double[] _x = [],
        _y = [];

    private CandidateFit(OriginalCandidate candidate, OriginalReading[] readings)
    {
        (Candidate, _readings, _start) = (candidate, readings, candidate.Model);
        _ratio = [.. candidate.Model.Coils.Select(coil => coil.Winding.Turns / candidate.Model.Coils[0].Winding.Turns)];
    }

    public OriginalCandidate Candidate { get; }
    public double LogEvidence { get; private set; } = double.NegativeInfinity;
    public double ChiSquare { get; private set; }
    public bool Converged { get; private set; }

    /// <summary>Mean and standard deviation of ln turns, and of the bare and overall diameter, m.</summary>
    public (double Mean, double Deviation) LogTurns { get; private set; }
    public (double Mean, double Deviation) BareM { get; private set; }
    public (double Mean, double Deviation) OverallM { get; private set; }

    /// <summary>ln of a quantity: mean, variance, and the part of the variance that is left when the turns are known.</summary>
    public (double Mean, double Variance, double Residual)[] Foretold { get; private set; } = [];

    /// <summary>Fits one candidate.</summary>
    /// <param name="candidate">What it may be.</param>
    /// <param name="readings">What was read.</param>
    /// <param name="wanted">Quantities to foretell.</param>
    /// <param name="worthwhile">Log-likelihood under which a candidate is given up: its evidence then stays at minus infinity.</param>
    /// <param name="cancel">Stops it.</param>
    public static CandidateFit Fit(
        OriginalCandidate candidate,
        OriginalReading[] readings,
        OriginalReading[] wanted,
        Func<double> worthwhile,
        CancellationToken cancel
    )
    {
        CandidateFit fit = new(candidate, readings);
        fit.Search(wanted, worthwhile, cancel);
        return fit;
    }

    private void Search(OriginalReading[] wanted, Func<double> worthwhile, CancellationToken cancel)
    {
        double turns = _start.Coils[0].Winding.Turns;
        bool hopeless = false;
        Vector<double> best = Vector<double>.Build.Dense(1);
        for (int scene = 0; scene < MostScenes; scene++)
        {
            cancel.ThrowIfCancellationRequested();
            SetScene(turns, wanted, cancel);
            best = best.Count == _free.Length + 1 ? best : Vector<double>.Build.Dense(_free.Length + 1);
            best[_free.Length] = Math.Log(turns);
            bool rests = Descend(best);
            Vector<double> left = Residuals(best);
            hopeless = scene > 0 && -left.DotProduct(left) / 2 < worthwhile();
            if (hopeless)
            {
                break;
            }

            double found = Math.Exp(best[_free.Length]);
            Converged = rests && Math.Abs(found / turns - 1) < Moved;
            turns = Math.Clamp(found, 50, 60_000);
            if (Converged)
            {
                break;
            }
        }

        if (!hopeless)
        {
            Conclude(best, wanted);
        }
    }

    private void SetScene(double turns, OriginalReading[] wanted, CancellationToken cancel)
    {
        PickupModel model = _start with
        {
            Coils = [.. _start.Coils.Select((coil, c) => coil with { Winding = coil.Winding with { Turns = turns * _ratio[c] } })],
        };
        double[] hz =
        [
            .. _readings
                .Concat(wanted)
                .Where(reading => reading.Quantity == OriginalQuantity.Inductance)
                .Select(reading => reading.AtHz)
                .Append(1000)
                .Distinct(),
        ];
        _scene = new ForecastScene(model, new ForecastOptions { FrequenciesHz = hz, Strings = false }, cancel);
        _inputs = new ForecastInputs(model, _scene);
        _vector = new ForecastVector(_scene, _inputs, null)
        {
            SearchPeaks = _readings.Any(reading => reading.Quantity == OriginalQuantity.UnloadedPeak),
        };
        HashSet<int> counters = [.. _inputs.Coils.Select(places => places.Turns)];
        _free = [.. Enumerable.Range(0, _inputs.All.Count).Where(i => !counters.Contains(i) && !_inputs.All[i].Estimate.IsExact)];
        (_x, _y) = (new double[_inputs.All.Count], new double[_vector.Count]);
    }

    /// <summary>Gauss–Newton with halved steps; true when it came to rest.</summary>
    private bool Descend(Vector<double> at)
    {
        Vector<double> residuals = Residuals(at);
        for (int step = 0; step < 30; step++)
        {
            Matrix<double> slope = Slope(at, residuals);
            Vector<double> change = (slope.TransposeThisAndMultiply(slope)).Solve(slope.TransposeThisAndMultiply(residuals));
            double part = 1,
                before = residuals.DotProduct(residuals);
            Vector<double> next = at - change,
                there = Residuals(next);
            while (there.DotProduct(there) > before && part > 1e-3)
            {
                part /= 2;
                next = at - part * change;
                there = Residuals(next);
            }

            if (there.DotProduct(there) > before)
            {
                return change.InfinityNorm() < 1e-2;
            }

            next.CopyTo(at);
            residuals = there;
            if (part * change.InfinityNorm() < 1e-5)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Readings, then room, then the priors of u and t, each over its standard deviation.</summary>
    private Vector<double> Residuals(Vector<double> at)
    {
        Evaluate(at);
        int free = _free.Length;
        Vector<double> r = Vector<double>.Build.Dense(_readings.Length + 1 + free + 1);
        for (int k = 0; k < _readings.Length; k++)
        {
            r[k] = (Math.Log(Foretell(_readings[k])) - Math.Log(_readings[k].Value)) / Deviation(_readings[k]);
        }

        double over = Enumerable
            .Range(0, _scene.Model.Coils.Count)
            .Max(c => _scene.Model.Coils[c].Bobbin.MaxBuildM is { } roomM ? Math.Log(_y[_vector.PlaceOf(c, CoilResult.Build)] / roomM) : 0);
        r[_readings.Length] = Math.Max(0, over) / RoomError;
        for (int i = 0; i < free; i++)
        {
            r[_readings.Length + 1 + i] = at[i];
        }

        r[^1] = (at[free] - Math.Log(UsualTurns)) / TurnsSpread;
        return r;
    }

    private void Evaluate(Vector<double> at)
    {
        for (int i = 0; i < _x.Length; i++)
        {
            _x[i] = _inputs.All[i].Estimate.Value;
        }

        for (int i = 0; i < _free.Length; i++)
        {
            _x[_free[i]] = _inputs.All[_free[i]].ValueAt(Math.Clamp(at[i], -8, 8));
        }

        for (int c = 0; c < _ratio.Length; c++)
        {
            _x[_inputs.Coils[c].Turns] = Math.Exp(Math.Clamp(at[_free.Length], 3, 12)) * _ratio[c];
        }

        _vector.Evaluate(_x, _y);
    }

    private Matrix<double> Slope(Vector<double> at, Vector<double> residuals)
    {
        Matrix<double> slope = Matrix<double>.Build.Dense(residuals.Count, at.Count);
        for (int j = 0; j < at.Count; j++)
        {
            double step = j == _free.Length ? 1e-4 : 1e-2,
                keep = at[j];
            at[j] = keep + step;
            Vector<double> up = Residuals(at);
            at[j] = keep - step;
            Vector<double> down = Residuals(at);
            at[j] = keep;
            slope.SetColumn(j, (up - down) / (2 * step));
        }

        return slope;
    }

    /// <summary>What a reading should show.</summary>
    private double Foretell(OriginalReading reading)
    {
        double OfCoils(CoilResult result, Func<IEnumerable<double>, double> join) =>
            join(Enumerable.Range(0, _ratio.Length).Select(c => _y[_vector.PlaceOf(c, result)]));
        CoilPlaces first = _inputs.Coils[0];
        double value = reading.Quantity switch
        {
            OriginalQuantity.DcResistance => _y[_vector.PlaceOf(PickupResult.DcResistance)],
            OriginalQuantity.Inductance => Apparent(reading.AtHz),
            OriginalQuantity.BareDiameter => _x[first.Bare],
            OriginalQuantity.OverallDiameter => _x[first.Overall],
            OriginalQuantity.ResistancePerLength => first.OhmPerM >= 0
                ? _x[first.OhmPerM]
                : CopperWire.OhmPerM(_x[first.Bare], 20, _scene.Model.Coils[0].Wire.ConductivitySPerM),
            OriginalQuantity.Build => OfCoils(CoilResult.Build, Enumerable.Max),
            OriginalQuantity.OuterLength => OfCoils(CoilResult.OuterLength, Enumerable.Max),
            OriginalQuantity.OuterWidth => OfCoils(CoilResult.OuterWidth, Enumerable.Max),
            OriginalQuantity.MeanTurnLength => OfCoils(CoilResult.MeanTurnLength, Enumerable.Average),
            OriginalQuantity.WireLength => OfCoils(CoilResult.WireLength, Enumerable.Sum),
            OriginalQuantity.WireMass => OfCoils(CoilResult.WireMass, Enumerable.Sum),
            OriginalQuantity.Capacitance => _y[_vector.PlaceOf(PickupResult.Capacitance)],
            OriginalQuantity.UnloadedPeak => _y[_vector.PlaceOf(PickupResult.UnloadedFrequency)],
            _ => _x[first.Turns],
        };
        return Math.Max(value, 1e-30);
    }

    /// <summary>The inductance that a meter shows: the coil's own capacitance makes it read high towards the resonance.</summary>
    private double Apparent(double hz)
    {
        int k = _scene.FrequenciesHz.ToList().FindIndex(f => Math.Abs(f - hz) < 1e-9 * hz);
        double henry = _y[_vector.PlaceOfSpectrum(k, inductance: true)],
            omega = 2 * Math.PI * hz;
        double left = 1 - omega * omega * henry * _y[_vector.PlaceOf(PickupResult.Capacitance)];
        return left > 0.2 ? henry / left : henry / 0.2;
    }

    private static double Deviation(OriginalReading reading)
    {
        double model = reading.Quantity switch
        {
            OriginalQuantity.DcResistance or OriginalQuantity.MeanTurnLength or OriginalQuantity.WireLength or OriginalQuantity.WireMass =>
                LengthError,
            OriginalQuantity.Inductance or OriginalQuantity.UnloadedPeak => InductanceError,
            _ => 0,
        };
        double meter = reading.Relative / Estimate.Sigmas95;
        return Math.Sqrt(meter * meter + model * model);
    }

    private void Conclude(Vector<double> at, OriginalReading[] wanted)
    {
        Vector<double> residuals = Residuals(at);
        Matrix<double> slope = Slope(at, residuals),
            precision = slope.TransposeThisAndMultiply(slope),
            covariance = precision.Inverse();
        int t = _free.Length;
        ChiSquare = residuals.DotProduct(residuals);
        LogEvidence =
            -ChiSquare / 2
            - precision.Determinant() switch
            {
                var det when det > 0 => Math.Log(det) / 2,
                _ => 0,
            }
            - Math.Log(TurnsSpread)
            - _readings.Sum(reading => Math.Log(Deviation(reading)));
        Evaluate(at);
        LogTurns = (at[t], Math.Sqrt(covariance[t, t]));
        BareM = Input(_inputs.Coils[0].Bare, covariance);
        OverallM = Input(_inputs.Coils[0].Overall, covariance);
        _vector.SearchPeaks = true;
        Foretold = [.. wanted.Select(reading => Spread(at, reading, covariance))];
    }

    private (double Mean, double Deviation) Input(int place, Matrix<double> covariance)
    {
        UncertainInput input = _inputs.All[place];
        int i = Array.IndexOf(_free, place);
        return (_x[place], i < 0 ? 0 : Math.Sqrt(covariance[i, i]) * Math.Abs(input.ValueAt(1) - input.ValueAt(-1)) / 2);
    }

    private (double Mean, double Variance, double Residual) Spread(Vector<double> at, OriginalReading reading, Matrix<double> covariance)
    {
        Vector<double> slope = Vector<double>.Build.Dense(at.Count);
        for (int j = 0; j < at.Count; j++)
        {
            double step = j == _free.Length ? 1e-4 : 1e-2,
                keep = at[j];
            at[j] = keep + step;
            Evaluate(at);
            double up = Math.Log(Foretell(reading));
            at[j] = keep - step;
            Evaluate(at);
            slope[j] = (up - Math.Log(Foretell(reading))) / (2 * step);
            at[j] = keep;
        }

        Evaluate(at);
        Vector<double> shared = covariance * slope;
        double variance = slope.DotProduct(shared),
            with = shared[_free.Length],
            turns = covariance[_free.Length, _free.Length];
        return (Math.Log(Foretell(reading)), Math.Max(0, variance), Math.Max(0, variance - with * with / turns));
    }
}
