using System.Globalization;
using Coilwright.Analysis.Forecasts;
using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Magnets;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Readings;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Spec;

/// <summary>
/// Spec sheet of one piece: what was read on it; the response is the model's forecast and says so. How far a reading lies from the recipe
/// stands on the shop's own copy alone.
/// </summary>
public static class PieceSheet
{
    private const double MetresPerInch = 0.0254;
    private const string NothingRead = "Nothing was read on this piece.";

    /// <summary>The sheet.</summary>
    /// <param name="recipe">The recipe of the piece's revision.</param>
    /// <param name="prediction">Its forecast on the load, with curves.</param>
    /// <param name="load">The load of the response.</param>
    /// <param name="piece">What was read.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="hideTurns">Leaves out turns, also where the recipe does not ask for it.</param>
    /// <param name="forHouse">True for the shop's own copy: readings against the recipe, and turns in any case.</param>
    public static Sheet Of(
        Recipe recipe,
        Prediction prediction,
        LoadCircuit load,
        PieceFacts piece,
        SheetHeading heading,
        bool hideTurns = false,
        bool forHouse = false
    )
    {
        bool hidden = !forHouse && (hideTurns || SpecSheet.HidesTurns(recipe));
        List<SheetPart> parts =
        [
            new TitlePart("Read on this piece" + (piece.Set.Length > 0 ? $" of set {piece.Set}" : "")),
            .. forHouse ? HouseReadings(recipe, prediction, piece) : Readings(piece),
        ];
        parts.AddRange(Magnets(piece));
        parts.Add(new TitlePart("Forecast of the model, not measured on this piece"));
        parts.AddRange(SpecSheet.Curve(prediction, "Response, loaded"));
        parts.Add(new TextPart($"Loaded means: {LoadFormatter.Of(load)}."));
        parts.Add(new TitlePart("Coils, from the recipe"));
        parts.Add(SpecSheet.Coils(recipe, prediction, hidden));
        if (ChargeRule.HasMagnets(recipe))
        {
            parts.Add(new CautionPart(string.Join(' ', Cautions.For(Job.Owning))));
        }

        string kind = forHouse ? "Readings of a piece, for the shop" : "Spec sheet of a piece";
        return new Sheet(kind, recipe.Name, heading, parts, Sheet.CodeOf(piece.Serial)) { OwnFacts = [("Serial", piece.Serial)] };
    }

    private static IEnumerable<SheetPart> Readings(PieceFacts piece)
    {
        yield return piece.Readings.Count > 0
            ? new TablePart(["quantity", "value", "95 % interval", "conditions"], [.. piece.Readings.Select(Row)], [2, 1.1, 1.4, 1.8])
            : new TextPart(NothingRead);
        yield return new TextPart("Inductance, Q and AC resistance as series values.");
    }

    private static IEnumerable<SheetPart> HouseReadings(Recipe recipe, Prediction prediction, PieceFacts piece)
    {
        VerdictLimits limits = VerdictLimits.ForPickup(recipe);
        yield return piece.Readings.Count > 0
            ? new TablePart(
                ["quantity", "value", "95 % interval", "conditions", "against the recipe"],
                [.. piece.Readings.Select(reading => (string[])[.. Row(reading), Against(reading, limits, prediction.Pickup)])],
                [2, 1.1, 1.4, 1.8, 1.6]
            )
            : new TextPart(NothingRead);
        yield return new TextPart(
            "Inductance, Q and AC resistance as series values. Where the recipe states a target the deviation is from it, else from the "
                + "forecast. This sheet stays in the shop."
        );
    }

    private static string[] Row(PieceReading reading) =>
        [
            ReadingFormatter.Name(reading),
            ReadingFormatter.Value(reading),
            ReadingFormatter.Interval(reading),
            ReadingFormatter.Conditions(reading),
        ];

    private static string Against(PieceReading reading, VerdictLimits limits, PickupForecast forecast)
    {
        ExpectedReading? expected = reading.AtHz is { } hertz ? limits.Expected(hertz) : null;
        (double? nominal, bool target) = reading.Quantity switch
        {
            QuantityKey.DcResistance => (limits.Resistance.Nominal, limits.Resistance.IsTarget),
            QuantityKey.Inductance => reading.AtHz is null ? (null, false) : limits.WantedInductance(reading.AtHz),
            QuantityKey.Q => (expected?.Quality, false),
            QuantityKey.AcResistance => (expected?.AcOverDc * limits.Resistance.Nominal, false),
            QuantityKey.UnloadedPeak => (forecast.UnloadedResonance?.Frequency.Value, false),
            QuantityKey.LoadedPeak => (forecast.LoadedResonance?.Frequency.Value, false),
            QuantityKey.Capacitance => (forecast.Capacitance.Value, false),
            _ => ((double?)null, false),
        };
        string against = target ? "target" : "forecast";
        return nominal is { } wanted && reading.IsNumber
            ? $"{ReadingFormatter.Signed(reading.Comparable / wanted - 1)} ({against} {ReadingFormatter.Value(reading, wanted)})"
            : "–";
    }

    private static IEnumerable<SheetPart> Magnets(PieceFacts piece)
    {
        if (piece.Poles is null && piece.FirstSwing is null && piece.Charge.Length == 0)
        {
            yield break;
        }

        yield return new TitlePart("Magnets and polarity" + (piece.Charge.Length > 0 ? ": " + piece.Charge : ""));
        if (piece.Poles is { PolesT.Count: > 0 } poles)
        {
            yield return new TextPart(
                $"Flux density over the poles, probe {Both(poles.JigDistanceM)} from "
                    + $"each{(poles.Instrument.Length > 0 ? ", " + poles.Instrument : "")}; spread "
                    + $"{(100 * poles.Spread).ToString("0.#", CultureInfo.InvariantCulture)} % of the mean:"
            );
            yield return new FiguresPart([.. poles.PolesT.Select((tesla, at) => Pole(tesla, at + 1))], 4);
        }

        string swing = piece.FirstSwing switch
        {
            > 0 => "the hot end swings positive first",
            < 0 => "the hot end swings negative first",
            0 => "not told apart",
            null => "not tested",
        };
        yield return new TextPart($"When iron comes near a pole: {swing}. Top of the poles: {Top(piece.Poles)}.");
    }

    private static KeyFigure Pole(double tesla, int number) =>
        new(
            string.Create(CultureInfo.InvariantCulture, $"pole {number}, {(tesla < 0 ? "south" : "north")}"),
            QuantityParser.FormatIn(Math.Abs(tesla), QuantityKind.FluxDensity, "G"),
            QuantityParser.FormatIn(Math.Abs(tesla), QuantityKind.FluxDensity, "mT")
        );

    private static string Top(PoleReading? poles) =>
        poles?.PolesT switch
        {
            null or { Count: 0 } => "not read",
            { } read when read.All(tesla => tesla > 0) => "north",
            { } read when read.All(tesla => tesla < 0) => "south",
            _ => "north and south, see above",
        };

    private static string Both(double lengthM) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm")} ({lengthM / MetresPerInch:0.000} in)"
        );
}
