using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Magnets;

/// <summary>Reads the charge of magnets as people type it.</summary>
public static class ChargeReader
{
    private const int LongestWords = 120;

    internal static readonly Limits Share = new(QuantityKind.Fraction, 0.01, 1, "%", "80 %");
    internal static readonly Limits Field = new(QuantityKind.FluxDensity, 1e-4, 2, "G", "900 G");
    internal static readonly Limits Jig = new(QuantityKind.Length, 0, 0.05, "mm", "1 mm");

    /// <summary>What may be typed, for messages.</summary>
    public static string Allowed => $"full, a share of full from {Share.Range}, or the field over the poles from {Field.Range}";

    /// <summary>The level typed; null, with every problem added, when nothing was said or it was not understood.</summary>
    /// <param name="entry">What was typed.</param>
    /// <param name="problems">Where problems go: "charge", "jig", "charger".</param>
    public static MagnetLevel? Read(ChargeEntry entry, ICollection<Problem> problems)
    {
        if (entry.Charger.Trim().Length > LongestWords)
        {
            problems.Add(new Problem("charger", "this is too long", null, $"up to {LongestWords} letters"));
        }

        string typed = entry.Level.Trim();
        double? jigM = JigOf(entry.Jig, problems);
        if (typed.Length == 0)
        {
            if (entry.Charger.Trim().Length > 0 || entry.Jig.Trim().Length > 0)
            {
                problems.Add(new Problem("charge", "charged to what?", null, Allowed));
            }

            return null;
        }

        return typed.Equals("full", StringComparison.OrdinalIgnoreCase) ? MagnetLevel.Full : LevelOf(typed, jigM, problems);
    }

    private static MagnetLevel? LevelOf(string typed, double? jigM, ICollection<Problem> problems)
    {
        (ParsedQuantity read, Limits limits) = Understand(typed);
        if (read.Entered is { IsKnown: true } share && limits == Share)
        {
            return Within("charge", share, Share, problems) ? new MagnetLevel(share.Si) : null;
        }

        if (read.Entered is { IsKnown: true } field)
        {
            // South poles read below zero; the level is a strength.
            return Within("charge", field with { Si = Math.Abs(field.Si) }, Field, problems)
                ? new MagnetLevel(null, Math.Abs(field.Si), jigM ?? MagnetLevel.UsualJigM)
                : null;
        }

        bool isBare = QuantityParser.TryParse(typed, QuantityKind.Fraction, unitRequired: false, out _, out _);
        string why = isBare ? "a bare number does not say whether it is % of full or gauss" : "not a charge";
        problems.Add(
            read.Readings.Count > 0
                ? new Problem("charge", read.Why, typed, Allowed) { Readings = read.Readings }
                : new Problem("charge", why, typed, Allowed)
        );
        return null;
    }

    /// <summary>A share of full or a field, whichever its unit says, with the limits it is held to.</summary>
    internal static (ParsedQuantity Read, Limits Limits) Understand(string typed)
    {
        ParsedQuantity share = QuantityParser.Read(typed, Share, unitRequired: true);
        return share.Entered.IsKnown || share.Readings.Count > 0
            ? (share, Share)
            : (QuantityParser.Read(typed, Field, unitRequired: true), Field);
    }

    private static double? JigOf(string typed, ICollection<Problem> problems)
    {
        if (typed.Trim().Length == 0)
        {
            return null;
        }

        if (!QuantityParser.TryParse(typed, Jig, unitRequired: false, out Entered entered, out string why, "mm") || !Jig.Allows(entered.Si))
        {
            problems.Add(new Problem("jig", why.Length > 0 ? why : Jig.Outside, typed, $"{Jig.Range}, for example {Jig.Example}"));
            return null;
        }

        return entered.Si;
    }

    private static bool Within(string field, Entered entered, Limits limits, ICollection<Problem> problems)
    {
        if (limits.Allows(entered.Si))
        {
            return true;
        }

        problems.Add(new Problem(field, limits.Outside, entered.Typed.Trim(), Allowed));
        return false;
    }
}
