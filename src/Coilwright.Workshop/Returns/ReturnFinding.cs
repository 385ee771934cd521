using System.Globalization;
using Coilwright.Analysis.Quantities;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Pieces;
using Coilwright.Workshop.Quantities;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Returns;

/// <summary>One quantity at dispatch and now.</summary>
/// <param name="Quantity">Its name.</param>
/// <param name="Then">At dispatch, SI, resistance at 20 °C; null when not measured.</param>
/// <param name="Now">Now; null when the meter finds no connection, or not measured.</param>
/// <param name="Words">The two for people, for example "7.26 kΩ → open".</param>
/// <param name="Off">True when it moved by more than the shop's tolerance.</param>
public sealed record ReturnLine(string Quantity, double? Then, double? Now, string Words, bool Off);

/// <summary>A piece that came back, against itself at dispatch.</summary>
/// <param name="Lines">Every quantity measured now.</param>
/// <param name="Cause">The probable cause, or that nothing moved.</param>
public sealed record ReturnFinding(IReadOnlyList<ReturnLine> Lines, string Cause)
{
    /// <summary>All of it in a line.</summary>
    public string Words => string.Join("; ", Lines.Select(line => line.Words).Append(Cause));

    /// <summary>Holds the readings against each other. The causes are rules of thumb: common practice, no source.</summary>
    /// <param name="then">Readings at dispatch.</param>
    /// <param name="now">Readings of today.</param>
    /// <param name="rules">For the tolerances.</param>
    public static ReturnFinding Of(IReadOnlyList<PieceReadingRecord> then, IReadOnlyList<PieceReadingRecord> now, ShopRules rules)
    {
        List<ReturnLine> lines = [];
        foreach (PieceReadingRecord reading in now.Where(reading => reading.Pole is null && reading.Quantity != QuantityKey.FirstSwing))
        {
            PieceReadingRecord? before = then.LastOrDefault(other =>
                other.Quantity == reading.Quantity
                && (other.AtHz is not { } hz || reading.AtHz is not { } at || Math.Abs(at - hz) <= 0.02 * hz)
            );
            double? was = before?.Si is null ? null : before.Comparable(),
                today = reading.Si is null ? null : reading.Comparable();
            bool off =
                reading.Si is null
                || (
                    was is { } old
                    && today is { } value
                    && Math.Abs(value / old - 1) > rules.TestTolerances.GetValueOrDefault(reading.Quantity, 0.05)
                );
            lines.Add(new ReturnLine(reading.Quantity, was, today, WordsOf(reading, was, today), off));
        }

        return new ReturnFinding(lines, CauseOf(lines));
    }

    private static string WordsOf(PieceReadingRecord reading, double? was, double? today)
    {
        string before = was is { } old ? Written(reading.Quantity, old) : "not measured at dispatch",
            now = today is { } read ? Written(reading.Quantity, read) + Change(was, read) : "open";
        bool isAt20C = Quantity.Find(reading.Quantity) is { IsComparedAt20C: true } && reading.TemperatureC is not null;
        string at = isAt20C ? " at 20 °C" : "";
        return $"{before} → {now}{at}";
    }

    private static string CauseOf(List<ReturnLine> lines)
    {
        ReturnLine? ohms = lines.Find(line => line.Quantity == QuantityKey.DcResistance),
            henries = lines.Find(line => line.Quantity == QuantityKey.Inductance);
        double ohm = Part(ohms),
            henry = Part(henries);
        return ohms switch
        {
            { Now: null } => "open: reheat the joints first, then look for a broken lead, then for a broken wire (rewind)",
            { Off: true } when ohm > 10 => "broken wire (the reading is leakage, not copper): check the joints and the start lead",
            { Off: true } when ohm is < -0.15 => "one coil is shorted out, or it is wired otherwise than when it left",
            { Off: true } when ohm > 0 => "a joint that corrodes or has loosened",
            { Off: true } => "shorted turns, or a short in the leads",
            _ when henries is { Off: true } && henry < 0 => "shorted turns, or a magnet or pole that moved",
            _ when lines.Exists(line => line.Quantity == QuantityKey.Q && line.Off) => "loss: shorted turns, or metal that was added",
            _ when lines.TrueForAll(line => !line.Off) => "unchanged since it was shipped",
            _ => "changed since it was shipped: "
                + string.Join(", ", lines.Where(line => line.Off).Select(line => KeyLabels.Of(line.Quantity))),
        };
    }

    private static double Part(ReturnLine? line) => line is { Then: { } then, Now: { } now } ? now / then - 1 : 0;

    private static string Change(double? was, double now) =>
        was is { } then ? string.Create(CultureInfo.InvariantCulture, $" ({(now / then - 1) * 100:+0.0;−0.0;0.0} %)") : "";

    private static string Written(string key, double si) =>
        Quantity.Find(key)?.Written(si) ?? si.ToString("0.###", CultureInfo.InvariantCulture);
}
