using Coilwright.Analysis.Diagnosis;

namespace Coilwright.Analysis.Tests.Diagnosis;

/// <summary>
/// Batches of coils whose true causes are known: sizes drawn from continuous distributions, readings from circuit formulas, seeded.
/// </summary>
internal sealed class SimulatedShop(int seed)
{
    private const double NominalOhm = 6200,
        NominalHenry = 2.5,
        QualityHz = 3000;
    private const string Slip = "a large slip of the count";
    private static readonly int[] s_round = [100, 200, 500, 1000, 2000];
    private readonly Random _random = new(seed);

    public IReadOnlyList<(string Cause, CoilEvidence Evidence)> Batch(int coils)
    {
        double pick = _random.NextDouble();
        string spool = pick switch
        {
            < 0.045 => "thin-wire",
            < 0.09 => "thick-wire",
            < 0.105 => "stretched-wire",
            _ => "none",
        };
        double wire = Wire(spool) + 0.006 * Gauss(),
            henry = 0.01 * Gauss() + (_random.NextDouble() < 0.03 ? 0.06 * Gauss() : 0),
            quality = 0.05 * Gauss();
        bool readsL = _random.NextDouble() < 0.7,
            readsQ = _random.NextDouble() < 0.5,
            temperature = _random.NextDouble() < 0.8;
        return [.. Enumerable.Range(0, coils).Select(_ => Coil(spool, wire, henry, quality, readsL, readsQ, temperature))];
    }

    private (string, CoilEvidence) Coil(
        string spool,
        double wire,
        double henryOff,
        double qualityOff,
        bool readsL,
        bool readsQ,
        bool temperature
    )
    {
        (string Name, double Prior)[] faults =
        [
            ("thin-wire", 0.006),
            ("thick-wire", 0.006),
            ("stretched-wire", 0.008),
            ("miscount", 0.03),
            (Slip, 0.006),
            ("warm-coil", temperature ? 0.005 : 0.08),
            ("shorted-turns", 0.02),
            ("high-resistance-joint", 0.004),
            ("wrong-gauge", 0.006),
            ("wrong-core", 0.008),
            ("meter-error", 0.012),
        ];
        double pick = _random.NextDouble();
        string cause = spool;
        foreach ((string name, double prior) in faults)
        {
            if (pick >= 0 && pick < prior)
            {
                cause = name;
            }

            pick -= prior;
        }

        double turns = 1,
            shorted = 0,
            ohm = wire,
            henry = 0;
        bool seen = false;
        switch (cause)
        {
            case Slip:
                turns = 1 + LargeSlip();
                seen = _random.NextDouble() < 0.5;
                break;
            case "miscount":
                turns = 1 + 0.04 * Gauss();
                seen = _random.NextDouble() < 0.5;
                break;
            case "warm-coil":
                ohm += Math.Log(1 + 0.00393 * Math.Clamp(10 + (temperature ? 4 : 8) * Gauss(), 2, 40));
                break;
            case "shorted-turns":
                shorted = Shorted();
                break;
            case "high-resistance-joint":
                ohm += Math.Log(1 + 0.01 * Math.Pow(200, _random.NextDouble()));
                break;
            case "wrong-gauge":
                ohm += 0.2249 * Step();
                break;
            case "wrong-core":
                henry = _random.NextDouble() switch
                {
                    < 0.3 => Math.Log(0.75) + 0.04 * Gauss(),
                    < 0.7 => 0.15 * Gauss(),
                    _ => 0.6 + 0.25 * Gauss(),
                };
                break;
            default:
                ohm += cause == spool ? 0 : Wire(cause);
                break;
        }

        double r = NominalOhm * Math.Exp(ohm + 0.005 * Gauss()) * Math.Pow(turns, 1.05 + 0.04 * Gauss()),
            l = NominalHenry * Math.Exp(henry + henryOff + 0.008 * Gauss()) * Math.Pow(turns, 2 + 0.07 * Gauss());
        (double lowL, double q) = Read(r, l, shorted);
        (double misread, double misreadL, double misreadQ) = cause == "meter-error" ? Misread() : default;
        return (
            cause == Slip ? "miscount" : cause,
            new CoilEvidence
            {
                NominalOhm = NominalOhm,
                NominalTurns = 8000,
                TemperatureKnown = temperature,
                OhmAt20C = r * (1 - shorted) * Math.Exp((temperature ? 0.002 : 0.01) * Gauss() + misread),
                InductanceRatio = readsL ? lowL / NominalHenry * Math.Exp(misreadL) : null,
                QualityRatio = readsQ
                    ? q * Math.Exp(qualityOff + 0.02 * Gauss() + misreadQ) / (2 * Math.PI * QualityHz * NominalHenry / NominalOhm)
                    : null,
                TurnsRatio = seen ? turns : 1,
                ReactanceAtInductance = 2 * Math.PI * 100 * NominalHenry / NominalOhm,
            }
        );
    }

    /// <summary>Two meshes: the rest of the winding, and the shorted loop; the loop holds together by a factor drawn anew.</summary>
    private (double LowInductance, double Quality) Read(double ohm, double henry, double part)
    {
        double kappa = part > 0 ? 1 + (0.1 + 0.4 * _random.NextDouble()) * (1 - part) : 1,
            self = henry * (1 - 2 * part + kappa * part * part);
        double w = 2 * Math.PI * QualityHz,
            mutual = henry * (part - kappa * part * part),
            loopX = w * kappa * part * part * henry,
            loopR = part * ohm;
        double loop = part > 0 ? w * w * mutual * mutual / (loopR * loopR + loopX * loopX) : 0;
        return (self, (w * self - loop * loopX) / ((1 - part) * ohm + loop * loopR));
    }

    private double Wire(string cause) =>
        cause switch
        {
            "thin-wire" => Above0(0.042, 0.02),
            "thick-wire" => -Above0(0.042, 0.02),
            "stretched-wire" => Above0(0.022, 0.01),
            _ => 0,
        };

    private double Above0(double mean, double deviation)
    {
        double drawn = mean + deviation * Gauss();
        return drawn > 0 ? drawn : Above0(mean, deviation);
    }

    /// <summary>Half, double, a round number left out or added, or stopped anywhere: part of the turns.</summary>
    private double LargeSlip()
    {
        double sign = _random.NextDouble() < 0.5 ? -1 : 1,
            round = s_round[_random.Next(s_round.Length)] / 8000.0;
        return _random.NextDouble() switch
        {
            < 0.2 => -0.5,
            < 0.3 => 1,
            < 0.7 => sign * round,
            _ => -0.15 - 0.8 * _random.NextDouble(),
        };
    }

    /// <summary>Even in the logarithm up to a fifth, then falling with the square.</summary>
    private double Shorted()
    {
        double part = 0.001 * Math.Pow(970, _random.NextDouble());
        return part <= 0.2 || _random.NextDouble() < 0.04 / part / part ? part : Shorted();
    }

    /// <summary>Errors of the readings of ohms, henries and Q, in logarithms.</summary>
    private (double Ohm, double Henry, double Quality) Misread() =>
        _random.NextDouble() switch
        {
            < 0.15 => (1.2 * Gauss(), 0, 0),
            < 0.35 => (1.2 * Gauss(), 0.7 * Gauss(), 0.7 * Gauss()),
            < 0.55 => ((_random.NextDouble() < 0.5 ? 1 : -1) * Math.Log(10), 0, 0),
            < 0.65 => ((_random.NextDouble() < 0.5 ? 1 : -1) * Math.Log(1000), 0, 0),
            < 0.85 => (0, 0.7 * Gauss(), 0),
            _ => (0, 0, 0.7 * Gauss()),
        };

    private double Step()
    {
        double pick = 7 * _random.NextDouble(),
            sign = pick < 3.5 ? 1 : -1;
        return sign
            * (
                (pick % 3.5) switch
                {
                    < 2 => 0.5,
                    < 3 => 1,
                    _ => 2,
                }
            );
    }

    private double Gauss() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());
}
