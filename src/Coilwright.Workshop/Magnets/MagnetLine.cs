using System.Globalization;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Pieces.Events;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Magnets;

/// <summary>A piece by its magnets.</summary>
/// <param name="Piece">The piece.</param>
/// <param name="Poles">What was read over its poles last; null when nothing was.</param>
/// <param name="Judged">Whether the piece goes on by that; null without a reading.</param>
public sealed record MagnetLine(PieceSnapshot Piece, PoleReading? Poles, TestOutcome? Judged)
{
    /// <summary>Its charge as it was said last; null when nobody said one.</summary>
    public MagnetCharge? Charge => MagnetCharge.Of(Piece);

    /// <summary>What its recipe asks for; null for nothing.</summary>
    public RequiredCharge? Wanted => ChargeRule.WantedOf(Piece);

    /// <summary>The step that charges it and is not done; empty for none.</summary>
    public string WaitingStep => ChargeRule.WaitingStep(Piece);

    /// <summary>True when its magnets are to be charged yet, or nobody said that they were.</summary>
    public bool Waits => Piece.IsInShop && (WaitingStep.Length > 0 || Charge is null);

    /// <summary>Numbers of the poles that stand the wrong way, from 1.</summary>
    public IReadOnlyList<int> Reversed => Poles?.Reversed(RecipePoles.NorthUp(Piece.Recipe)) ?? [];

    /// <summary>What to do about its poles; empty when they are as they should be. Common practice, no source.</summary>
    public string Advice =>
        Judged?.Result switch
        {
            TestResult.Stop =>
                $"Set {Piece.Piece.Serial} aside: nothing goes on with it. Turn the magnet of {PoleWords} round or charge it "
                    + "the right way, then read every pole again at the final test.",
            TestResult.Fail => "Look at the weakest pole first: a cracked or short magnet, or a probe that stood off. Charge all of them "
                + "anew, then read every pole again at the final test.",
            _ => "",
        };

    /// <summary>Lots of its magnets.</summary>
    public IReadOnlyList<string> Lots =>
        [
            .. Piece
                .PartsIn.Where(part => part.Kind == PartKind.Magnets && part.Lot.Length > 0)
                .Select(part => part.Lot)
                .Distinct(StringComparer.OrdinalIgnoreCase),
        ];

    /// <summary>A piece with the poles as they were read last.</summary>
    /// <param name="life">The piece.</param>
    /// <param name="rules">The shop's limit of the spread.</param>
    public static MagnetLine Of(PieceSnapshot life, ShopRules rules)
    {
        PieceEvent? read = life.History.InForce.LastOrDefault(one => life.ReadingsOf(one).Any(reading => reading.Pole is not null));
        PoleReading? poles = read is null ? null : PoleReading.Of(life.ReadingsOf(read));
        return new MagnetLine(life, poles, poles?.Judge(RecipePoles.NorthUp(life.Recipe), rules.GaussSpread));
    }

    private string PoleWords =>
        (Reversed.Count == 1 ? "pole " : "poles ")
        + string.Join(", ", Reversed.Select(pole => pole.ToString(CultureInfo.InvariantCulture)));
}
