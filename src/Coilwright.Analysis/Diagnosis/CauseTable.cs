using System.Collections.Frozen;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Analysis.Diagnosis;

/// <summary>
/// Every cause that is known of, in one place: physics, starting rate, words, quickest check and the reading that shows it. A new cause is
/// one entry here and nothing else.
/// </summary>
/// <remarks>
/// How a cause moves a reading is arithmetic or a circuit; how often it happens and how much it scatters is our assumption: common practice
/// at best, no source [FaultRates]. Any fault is taken to be as frequent as any other until a shop has confirmed its own (
/// <see cref="CauseRates"/>).
/// </remarks>
public static class CauseTable
{
    /// <summary>
    /// Starting rate of a fault, part of all coils: all of them together on one coil in ten. Slips of the counter have twice that, thick
    /// wire and a finger half of it.
    /// </summary>
    private const double Usual = 0.008;

    /// <summary>How often a coil is warm where nobody wrote a temperature down.</summary>
    private const double WarmUnnoticed = 0.08;

    /// <summary>The causes; the first is that nothing is wrong.</summary>
    public static IReadOnlyList<CauseEntry> All { get; } =
    [
        new()
        {
            Key = "none",
            Label = "nothing wrong",
            Rate = 0,
            Check = "",
            Detail = (_, _, _) => "",
        },
        new()
        {
            Key = "thin-wire",
            Label = "thin wire",
            Rate = Usual,
            Check = "measure 10 m off the spool",
            Reading = QuantityKey.WireResistance,
            RateFor = coil => coil.WireMeasured ? 0.3 * Usual : Usual,
            MovesOhmsAlone = true,
            Terms = coil => WireCauses.OffSpool(coil, 1),
            Detail = (_, offset, _) => CauseFormatter.OhmsPerMetre("thin wire", offset),
        },
        new()
        {
            Key = "thick-wire",
            Label = "thick wire",
            Rate = Usual / 2,
            Check = "measure 10 m off the spool",
            Reading = QuantityKey.WireResistance,
            RateFor = coil => coil.WireMeasured ? 0.15 * Usual : Usual / 2,
            MovesOhmsAlone = true,
            Terms = coil => WireCauses.OffSpool(coil, -1),
            Detail = (_, offset, _) => CauseFormatter.OhmsPerMetre("thick wire", offset),
        },
        new()
        {
            Key = "stretched-wire",
            Label = "stretched wire",
            Rate = Usual,
            Check = "check the tension",
            Reading = QuantityKey.WireResistance,
            MovesOhmsAlone = true,
            Terms = WireCauses.Stretched,
            Detail = (_, offset, _) => CauseFormatter.OhmsPerMetre("stretched wire", offset),
        },
        new()
        {
            Key = "miscount",
            Label = "wrong turn count",
            Rate = 2 * Usual,
            Check = "check the counter with a marked test",
            Reading = QuantityKey.Turns,
            Terms = TurnCauses.Miscounts,
            Detail = (size, _, coil) => CauseFormatter.Miscount(size, coil.NominalTurns),
        },
        new()
        {
            Key = "warm-coil",
            Label = "warm coil",
            Rate = Usual,
            Check = "let it cool and read again",
            Reading = QuantityKey.DcResistance,
            IsOfReading = true,
            RateFor = coil => coil.TemperatureKnown ? Usual : WarmUnnoticed,
            MovesOhmsAlone = true,
            Terms = WireCauses.Warm,
            Detail = (size, _, _) => CauseFormatter.Warm(size),
        },
        new()
        {
            Key = "shorted-turns",
            Label = "shorted turns",
            Rate = Usual,
            Check = "look for bare wire at start, splice and flange",
            Reading = QuantityKey.Q,
            Terms = TurnCauses.Shorts,
            Detail = (size, _, coil) => CauseFormatter.Shorted(size, coil.NominalTurns),
        },
        new()
        {
            Key = "open",
            Label = "open",
            Rate = Usual,
            Check = "then look for a broken lead",
            Detail = (_, _, _) => "open: reheat the joints first",
        },
        new()
        {
            Key = "broken-coupled",
            Label = "broken wire",
            Rate = Usual,
            Check = "check joints and start lead",
            Terms = ReadingCauses.Broken,
            Detail = (_, _, _) => "broken wire: the meter sees only the coil's stray capacitance",
        },
        new()
        {
            Key = "high-resistance-joint",
            Label = "bad joint",
            Rate = Usual,
            Check = "reheat the joint and read again",
            Reading = QuantityKey.DcResistance,
            MovesOhmsAlone = true,
            Terms = WireCauses.Joints,
            Detail = (size, _, coil) => CauseFormatter.Joint(size * coil.NominalOhm),
        },
        new()
        {
            Key = "coil-bridged",
            Label = "one coil is shorted out",
            Rate = 2.5 * Usual,
            Check = "check the leads against the wiring sheet",
            Terms = ReadingCauses.Bridged,
            Detail = (_, _, _) => "one coil is shorted out",
        },
        new()
        {
            Key = "wired-parallel",
            Label = "wired in parallel",
            Rate = Usual,
            Check = "check the leads against the wiring sheet",
            Terms = ReadingCauses.Parallel,
            Detail = (_, _, _) => "the coils are wired in parallel",
        },
        new()
        {
            Key = "wrong-gauge",
            Label = "wrong gauge of wire",
            Rate = Usual,
            Check = "measure the wire",
            Reading = QuantityKey.WireResistance,
            MovesOhmsAlone = true,
            Terms = WireCauses.Gauges,
            Detail = (size, _, _) => CauseFormatter.Gauges(size),
        },
        new()
        {
            Key = "wrong-core",
            Label = "wrong core",
            Rate = Usual,
            Check = "check poles and magnets",
            Reading = QuantityKey.Inductance,
            Terms = ReadingCauses.Cores,
            Detail = (_, _, _) => "wrong core: resistance as expected, inductance not",
        },
        new()
        {
            Key = "parallel-path",
            Label = "finger or flux across the clips",
            Rate = Usual / 2,
            Check = "let go of the clips, clean the leads and read again",
            Reading = QuantityKey.DcResistance,
            IsOfReading = true,
            Terms = ReadingCauses.Across,
            Detail = (size, _, _) => CauseFormatter.Across(size),
        },
        new()
        {
            Key = "meter-error",
            Label = "readings do not agree",
            Rate = Usual,
            Check = "check range, leads and zero",
            Reading = QuantityKey.DcResistance,
            IsOfReading = true,
            Terms = ReadingCauses.Meters,
            Detail = (_, _, _) => "wrong reading: range, leads or zero of the meter",
        },
    ];

    private static readonly FrozenDictionary<string, CauseEntry> s_byKey = All.ToFrozenDictionary(
        cause => cause.Key,
        StringComparer.Ordinal
    );

    /// <summary>A cause by its key; null where there is none.</summary>
    public static CauseEntry? Find(string key) => s_byKey.GetValueOrDefault(key);

    /// <summary>Every size of every cause that this coil can have, "none" last; the weights sum to one.</summary>
    internal static IReadOnlyList<CauseTerm> CreateTerms(CoilEvidence evidence, CauseRates rates)
    {
        List<CauseTerm> faults = [];
        foreach (CauseEntry cause in All)
        {
            double rate = (cause.RateFor?.Invoke(evidence) ?? cause.Rate) * rates.FactorOf(cause.Key);
            faults.AddRange(cause.Terms(evidence).Select(term => term with { Cause = cause.Key, Weight = rate * term.Weight }));
        }

        faults.Add(
            CauseTerm.OfOhms(Math.Max(0.5, 1 - faults.Sum(fault => fault.Weight)), 0, new LogSpread(0, CauseTerm.OhmScatter), evidence) with
            {
                Cause = "none",
            }
        );
        return faults;
    }
}
