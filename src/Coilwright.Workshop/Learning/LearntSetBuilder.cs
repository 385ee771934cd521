using System.Globalization;
using Coilwright.Analysis.Learning;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.Learning;

/// <summary>From the coils of a shop to a set of corrections with the lines that it is proposed for.</summary>
internal static class LearntSetBuilder
{
    /// <summary>Bobbin and wire are told apart when each is known at most so many times worse than both together.</summary>
    private const double Apart = 2;

    /// <summary>The set; without lines when the readings do not show that any forecast is off.</summary>
    public static LearntSet Build(int number, GatheredCoils coils)
    {
        LearntQuantity ohms = HierarchicalFit.Fit(coils.Resistance, coils.Wire, LearningPriors.Resistance),
            henries = HierarchicalFit.Fit(coils.Inductance, [], LearningPriors.Inductance);
        IReadOnlyList<IReadOnlyList<EvidenceGroup>> found = LearningEvidence.Find([
            (ohms, LearningCoil.ResistanceGroups, LearningPriors.LeastResistance),
            (henries, LearningCoil.InductanceGroups, LearningPriors.LeastInductance),
        ]);
        return new LearntSet(
            number,
            ohms,
            henries,
            [
                .. found[0].Where(group => group.IsOff).Select(group => OfResistance(group, ohms, coils.Lines)),
                .. found[1].Where(group => group.IsOff).Select(group => OfInductance(group, henries, coils.Lines)),
            ]
        );
    }

    /// <summary>Why nothing is proposed.</summary>
    public static string WhyNot(GatheredCoils coils) =>
        coils.Resistance.Count + coils.Inductance.Count == 0
            ? "no coil of this shop was read yet that could be set against its forecast"
            : string.Create(
                CultureInfo.InvariantCulture,
                $"the readings do not show that any forecast is off ({coils.Resistance.Count} coils with DC resistance, "
                    + $"{coils.Inductance.Count} with inductance)"
            );

    private static LearntLine OfResistance(EvidenceGroup group, LearntQuantity learnt, IReadOnlyList<LineOfCoils> lines)
    {
        EffectPrior[] effects = EffectsOf(group, learnt);
        LearntCorrection all = learnt.Correction(effects),
            bobbin = learnt.Correction([.. effects.Where(one => one.Effect.Kind is EffectKind.Shop or EffectKind.Bobbin)]),
            wire = learnt.Correction([.. effects.Where(one => one.Effect.Kind is EffectKind.Wire or EffectKind.Lot)]);
        LearntLine line = Line(group, QuantityKey.DcResistance, learnt, all, lines) with
        {
            Of = LearningWords.Of(group.Effects.First(one => one.Kind == EffectKind.Lot).Name),
        };
        return bobbin.Half <= Apart * all.Half && wire.Half <= Apart * all.Half
            ? line with
            {
                Apart = true,
                OfBobbin = Math.Exp(bobbin.Mean) - 1,
                OfBobbinHalf = bobbin.Half,
                OfWire = Math.Exp(wire.Mean) - 1,
                OfWireHalf = wire.Half,
            }
            : line;
    }

    private static LearntLine OfInductance(EvidenceGroup group, LearntQuantity learnt, IReadOnlyList<LineOfCoils> lines) =>
        Line(group, QuantityKey.Inductance, learnt, learnt.Correction(EffectsOf(group, learnt)), lines);

    private static LearntLine Line(
        EvidenceGroup group,
        string quantity,
        LearntQuantity learnt,
        LearntCorrection correction,
        IReadOnlyList<LineOfCoils> lines
    )
    {
        Effect own = group.Effects.FirstOrDefault(one => one.Kind == EffectKind.Bobbin);
        string core = group.Effects.FirstOrDefault(one => one.Kind == EffectKind.Core).Name ?? "";
        Effect bobbin = own.Name is null ? new Effect(EffectKind.Bobbin, core.Split('|', 2)[0]) : own;
        return new LearntLine(
            lines.FirstOrDefault(line => line.Effect == bobbin)?.Name ?? "",
            quantity,
            LearningWords.Of(bobbin.Name),
            core.Contains('|', StringComparison.Ordinal) ? core.Split('|', 2)[1] : "",
            group.Coils,
            (int)Math.Round(group.Coils - group.Good),
            Math.Exp(correction.Mean) - 1,
            correction.Half,
            Math.Sqrt(learnt.CoilVariance),
            Apart: false
        );
    }

    /// <summary>The effects of most of the group's coils: their spool and winder too.</summary>
    private static EffectPrior[] EffectsOf(EvidenceGroup group, LearntQuantity learnt)
    {
        LearningCell[] cells = [.. learnt.Cells.Where(cell => group.Effects.All(effect => cell.Effects.Any(one => one.Effect == effect)))];
        LearningCell most = cells.MaxBy(cell => cell.Coils)!;
        return [.. most.Effects];
    }
}
