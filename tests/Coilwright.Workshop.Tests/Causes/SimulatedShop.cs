using System.Globalization;
using System.Numerics;
using Coilwright.Analysis.Quantities;
using Coilwright.Physics.Wire;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Workshop.Tests.Causes;

/// <summary>A coil that was read, with what is true of it.</summary>
/// <param name="Kind">The fault, as <see cref="FaultRanges"/> names it; empty for a good coil.</param>
/// <param name="Cause">The cause that is right, "none" for a good coil.</param>
/// <param name="Readings">What was read.</param>
/// <param name="IsGood">Whether the coil itself has no fault, whatever its reading has.</param>
internal sealed record SimulatedCoil(string Kind, string Cause, IReadOnlyList<ReadingRecord> Readings, bool IsGood);

/// <summary>A simulated shop that winds one recipe.</summary>
internal sealed class SimulatedShop(SimulatedRecipe recipe, int seed)
{
    private const double Copper = CopperWire.TemperatureCoefficientAt20C;
    private readonly Random _random = new(seed);
    private readonly double[] _rates = Rates(seed);

    public SimulatedRecipe Recipe => recipe;

    /// <summary>A batch in which every coil has a fault with a chance, or exactly one has a fault of a kind.</summary>
    /// <param name="faulty">Chance of a fault for each coil.</param>
    /// <param name="kind">The one fault of a batch; null for a chance in each.</param>
    /// <param name="quality">Whether Q is read beside R and L.</param>
    /// <param name="henry">Whether L is read.</param>
    /// <param name="spool">How far the spool is off, parts of one; null draws it.</param>
    /// <param name="henryOff">What the whole batch's inductance is off by, parts of one.</param>
    public IReadOnlyList<SimulatedCoil> Batch(
        double faulty,
        string? kind,
        bool quality,
        bool henry = true,
        double? spool = null,
        double henryOff = 0
    )
    {
        (double ohmDoubt, double henryDoubt, double lossDoubt) = recipe.HasTargets ? FaultRanges.FromTarget : FaultRanges.FromForecast;
        double wire = (spool ?? FaultRanges.Spools * Gauss()) + ohmDoubt * Gauss(),
            common = henryDoubt * Gauss() + henryOff,
            loss = lossDoubt * Gauss(),
            room = Even(17, 27);
        int at = kind is "thin wire, rest of the batch" ? _random.Next(3, 10) : _random.Next(FaultRanges.BatchSize);
        List<SimulatedCoil> coils = [];
        double later = 0;
        for (int n = 0; n < FaultRanges.BatchSize; n++)
        {
            FaultRanges.Range? fault = kind is null ? Chance(faulty) : null;
            if (kind is not null && n == at)
            {
                fault = FaultRanges.All.Single(one => one.Kind == kind);
            }

            double size = fault is null ? 0 : Size(fault);
            bool rest = fault?.Kind == "thin wire, rest of the batch" && later == 0;
            later = rest ? size : later;
            if (rest || (fault is null && later > 0))
            {
                coils.Add(
                    Read(
                        "thin wire, rest of the batch",
                        "thin-wire",
                        Own(recipe.Physics.Good, wire + later, common, loss),
                        room,
                        henry,
                        quality
                    )
                );
            }
            else
            {
                coils.Add(Coil(fault, size, wire + later, common, loss, room, henry, quality));
            }
        }

        return coils;
    }

    private SimulatedCoil Coil(
        FaultRanges.Range? fault,
        double size,
        double wire,
        double common,
        double loss,
        double room,
        bool henry,
        bool quality
    )
    {
        string kind = fault?.Kind ?? "",
            cause = fault?.Cause ?? "none";
        double sign = _random.NextDouble() < 0.5 ? -1 : 1;
        Coil whole = kind switch
        {
            "miscount" => recipe.Physics.WithTurns(1 + sign * size),
            "half the turns" or "twice the turns" or "a digit dropped" => recipe.Physics.WithTurns(size),
            "a round number dropped" => recipe.Physics.WithTurns(1 - (size < 750 ? 500 : 1000) / recipe.Physics.Turns),
            "wrong core" => recipe.Physics.WrongCores[(int)(size * recipe.Physics.WrongCores.Count)],
            "wrong gauge" => recipe.Physics.OneGauge,
            "half a gauge" => recipe.Physics.HalfGauge,
            _ => recipe.Physics.Good,
        };
        double more = kind is "thin wire, one coil" or "stretched wire" or "thin wire, rest of the batch" ? size : 0;
        Coil coil = Own(whole, wire + more, common, loss);
        return kind switch
        {
            "warm coil" => Read(kind, cause, coil, room, henry, quality, warmer: size),
            "bad joint" => Read(kind, cause, coil with { Ohm = coil.Ohm + size }, room, henry, quality),
            "shorted turns" => Read(kind, cause, coil, room, henry, quality, shorted: size),
            "finger across the clips" => Read(kind, cause, coil, room, henry, quality, across: size),
            "open" => Read(kind, cause, coil, room, henry: false, quality: false, instead: double.PositiveInfinity),
            "broken wire" => Read(kind, cause, coil, room, henry: false, quality: false, instead: size),
            "wrong range" => Read(kind, cause, coil, room, henry, quality, range: RangeFactor()),
            _ => Read(kind, cause, coil, room, henry, quality),
        };
    }

    private Coil Own(Coil of, double wire, double common, double loss)
    {
        double henry = Math.Exp(common + FaultRanges.HenryScatter * Gauss()),
            lost = Math.Exp(loss + FaultRanges.LossScatter * Gauss());
        return of with
        {
            Ohm = of.Ohm * (1 + wire) * (1 + FaultRanges.OhmScatter * Gauss()),
            HenryLow = of.HenryLow * henry,
            HenryHigh = of.HenryHigh * henry,
            LossLow = of.LossLow * lost,
            LossHigh = of.LossHigh * lost,
        };
    }

    private SimulatedCoil Read(
        string kind,
        string cause,
        Coil coil,
        double room,
        bool henry,
        bool quality,
        double warmer = 0,
        double shorted = 0,
        double across = double.PositiveInfinity,
        double range = 1,
        double? instead = null
    )
    {
        double typed = Math.Round(room + Even(-FaultRanges.TypedWithinC, FaultRanges.TypedWithinC), 1),
            ohm = coil.Ohm * (1 + Copper * (room + warmer - 20)),
            dc = 1 / (1 / (ohm * (1 - shorted)) + 1 / across),
            tightness = Even(1.1, 1.5);
        double Meter(double deviation) => 1 + deviation * Gauss();
        Complex At(double hz, double henries, double loss)
        {
            double w = 2 * Math.PI * hz,
                kappa = 1 + (tightness - 1) * (1 - shorted);
            Complex rest = new(
                ohm * (1 - shorted) + loss * Math.Pow(1 - shorted, 2),
                w * henries * (1 - 2 * shorted + kappa * shorted * shorted)
            );
            double mutual = w * henries * (shorted - kappa * shorted * shorted);
            Complex own = shorted > 0 ? rest + mutual * mutual / new Complex(ohm * shorted, w * henries * kappa * shorted * shorted) : rest;
            return 1 / (1 / own + new Complex(1 / across, w * coil.Farad));
        }

        List<ReadingRecord> readings =
        [
            instead is double.PositiveInfinity
                ? Record(QuantityKey.DcResistance, null, typed, null) with
                {
                    Flag = PossibleReading.Open,
                }
                : Record(QuantityKey.DcResistance, (instead ?? dc) * range * Meter(FaultRanges.OhmMeter), typed, null),
        ];
        if (henry)
        {
            Complex seen = At(CoilPhysics.LowHz, coil.HenryLow, coil.LossLow);
            double shown = seen.Imaginary / (2 * Math.PI * CoilPhysics.LowHz) * Meter(FaultRanges.HenryMeter);
            readings.Add(Record(QuantityKey.Inductance, shown, null, CoilPhysics.LowHz));
        }

        if (quality)
        {
            Complex seen = At(CoilPhysics.HighHz, coil.HenryHigh, coil.LossHigh);
            readings.Add(Record(QuantityKey.Q, seen.Imaginary / seen.Real * Meter(FaultRanges.QualityMeter), null, CoilPhysics.HighHz));
        }

        return new SimulatedCoil(kind, cause, readings, cause is "none" or "warm-coil" or "meter-error" or "parallel-path");
    }

    private static ReadingRecord Record(string quantity, double? si, double? celsius, double? hz) =>
        new()
        {
            Id = Guid.NewGuid(),
            BatchId = Guid.Empty,
            Tag = "",
            Quantity = quantity,
            Typed = si is { } value ? value.ToString("G5", CultureInfo.InvariantCulture) + " Ω" : "open",
            Unit = quantity == QuantityKey.DcResistance ? "Ω" : "",
            Si = si,
            TemperatureC = celsius,
            AtHz = hz,
            TimeUtc = DateTimeOffset.UnixEpoch,
        };

    private FaultRanges.Range? Chance(double faulty)
    {
        if (_random.NextDouble() >= faulty)
        {
            return null;
        }

        double pick = _random.NextDouble() * _rates.Sum();
        int place = Array.FindIndex(_rates, rate => (pick -= rate) < 0);
        return FaultRanges.All[Math.Max(0, place)];
    }

    private double Size(FaultRanges.Range of) =>
        of.IsDecades ? of.Low * Math.Pow(of.High / of.Low, _random.NextDouble()) : Even(of.Low, of.High);

    private double RangeFactor() =>
        _random.Next(3) switch
        {
            0 => 10,
            1 => 0.1,
            _ => 0.001,
        };

    private double Even(double low, double high) => low + (high - low) * _random.NextDouble();

    private double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    private static double[] Rates(int seed)
    {
        Random random = new(seed ^ 0x5bd1);
        return [.. FaultRanges.All.Select(_ => Math.Pow(2, 2 * random.NextDouble() - 1))];
    }
}
