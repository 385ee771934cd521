using Coilwright.Analysis.Forecasts;
using Coilwright.Papers.Formatting;

namespace Coilwright.Web.Views;

/// <summary>Which numbers of a prediction a table shows, and what they are called.</summary>
public static class ForecastRows
{
    /// <summary>The pickup as a whole, its strings, its poles, then coil by coil; a group that is empty is left out.</summary>
    public static IReadOnlyList<(string Title, IReadOnlyList<(string Label, Figure Figure)> Rows)> GroupsOf(Prediction prediction) =>
        [
            .. new (string, IReadOnlyList<(string, Figure)>)[]
            {
                ("The pickup", Of(prediction.Pickup)),
                ("Capacitance, impedance and hum", OfRest(prediction.Pickup)),
                ("Strings", OfStrings(prediction.Pickup)),
                ("Poles", OfPoles(prediction.Pickup)),
            }.Where(group => group.Item2.Count > 0),
            .. prediction.Coils.Select(coil => ($"Coil: {coil.Name}", Of(coil))),
        ];

    /// <summary>The whole pickup.</summary>
    public static IReadOnlyList<(string Label, Figure Figure)> Of(PickupForecast pickup)
    {
        List<(string, Figure)> rows = [("DC resistance at 20 °C", pickup.DcResistance), ("Inductance at 1 kHz", pickup.Inductance)];
        if (pickup.UnloadedResonance is { } bare)
        {
            rows.Add(("Resonance, unloaded", bare.Frequency));
        }

        if (pickup.LoadedResonance is { } loaded)
        {
            rows.Add(("Resonance, on this load", loaded.Frequency));
            rows.Add(("Peak gain, on this load", loaded.Gain));
        }

        if (pickup.Coupling is { } coupling)
        {
            rows.Add(("Coupling of the coils", coupling));
        }

        return rows;
    }

    private static IReadOnlyList<(string Label, Figure Figure)> OfRest(PickupForecast pickup) =>
        [.. OfCapacitance(pickup), .. pickup.Others.Select(one => (FigureFormatter.Heading(one.Name), one)), .. OfHum(pickup)];

    private static IReadOnlyList<(string Label, Figure Figure)> OfCapacitance(PickupForecast pickup) =>
        [
            ("Capacitance", pickup.Capacitance),
            .. (pickup.CapacitanceShares?.Present ?? []).Select(share => ($"Of it {FigureFormatter.Name(share.Name)}", share)),
        ];

    private static IReadOnlyList<(string Label, Figure Figure)> OfHum(PickupForecast pickup) =>
        [
            ("Hum, effective area", pickup.HumEffectiveArea),
            .. pickup.Coupling is null ? [] : new[] { ("Hum left of both coils'", pickup.HumResidual) },
            .. pickup.HumGradient.Select((slope, axis) => ($"Hum, field changing along {"xyz"[axis]}", slope)),
        ];

    private static IReadOnlyList<(string Label, Figure Figure)> OfStrings(PickupForecast pickup) =>
        [
            .. pickup.Strings.Select(one => ($"Output, string {one.Number}", one.Sensitivity)),
            .. pickup.Strings.Select(one => ($"Field at string {one.Number}", one.Field)),
        ];

    private static IReadOnlyList<(string Label, Figure Figure)> OfPoles(PickupForecast pickup) =>
        [
            .. pickup.Poles.Select(one =>
                (
                    $"Field {FigureFormatter.Value(one.JigM, "m")} over pole "
                        + $"{one.Number}{(pickup.Coupling is null ? "" : " of " + one.Coil)}",
                    one.Field
                )
            ),
        ];

    /// <summary>One coil.</summary>
    public static IReadOnlyList<(string Label, Figure Figure)> Of(CoilForecast coil) =>
        [
            .. coil.Fill is { } fill ? new[] { ("Fill of the window", fill) } : [],
            ("Build", coil.Build),
            ("Layers", coil.Layers),
            ("Turns per layer", coil.TurnsPerLayer),
            ("Outer length", coil.OuterLength),
            ("Outer width", coil.OuterWidth),
            ("Mean turn", coil.MeanTurnLength),
            ("Wire length", coil.WireLength),
            ("Wire mass", coil.WireMass),
            ("DC resistance at 20 °C", coil.DcResistance),
            ("Inductance without cores", coil.AirInductance),
            ("Inductance at 1 kHz", coil.Inductance),
            ("Capacitance", coil.Capacitance),
        ];
}
