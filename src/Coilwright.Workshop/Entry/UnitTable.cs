using System.Collections.Frozen;
using UnitsNet;

namespace Coilwright.Workshop.Entry;

/// <summary>One unit of one kind of quantity: SI value = number × 10^Power × Scale + Offset.</summary>
/// <param name="Symbol">Standard spelling, as written by the program.</param>
/// <param name="Power">Power of ten, kept apart so that "470 pF" becomes the double nearest to 470e-12.</param>
/// <param name="Scale">Factor besides the power of ten.</param>
/// <param name="Spellings">Further spellings, with µ as u, ohm as Ω and no spaces.</param>
public sealed record Unit(string Symbol, int Power, double Scale, params string[] Spellings)
{
    /// <summary>Added after scaling; only temperatures have one.</summary>
    public double Offset { get; init; }

    public double ToSi(double number) => number * Math.Pow(10, Power) * Scale + Offset;

    public double FromSi(double si) =>
        Power < 0 ? (si - Offset) / Scale * Math.Pow(10, -Power) : (si - Offset) / Scale / Math.Pow(10, Power);
}

/// <summary>The units that entry understands, kind by kind; the first of each kind is its SI unit.</summary>
public static class UnitTable
{
    private static readonly FrozenDictionary<QuantityKind, Unit[]> s_units = new Dictionary<QuantityKind, Unit[]>
    {
        [QuantityKind.Length] =
        [
            new("m", 0, 1, "metre", "metres", "meter", "meters"),
            new("cm", -2, 1),
            new("mm", -3, 1),
            new("µm", -6, 1, "um", "micron", "microns"),
            new("km", 3, 1),
            new("in", 0, Length.FromInches(1).Meters, "inch", "inches", "\"", "″", "''"),
            new("thou", 0, Length.FromMils(1).Meters, "mil", "mils"),
            new("ft", 0, Length.FromFeet(1).Meters, "foot", "feet"),
        ],
        [QuantityKind.Resistance] =
        [
            new("Ω", 0, 1, "R"),
            new("mΩ", -3, 1, "m"),
            new("kΩ", 3, 1, "k", "K", "KΩ"),
            new("MΩ", 6, 1, "M", "meg", "megΩ"),
            new("GΩ", 9, 1, "G"),
        ],
        [QuantityKind.Inductance] = [new("H", 0, 1, "henry", "henries"), new("mH", -3, 1, "m"), new("µH", -6, 1, "uH", "u")],
        [QuantityKind.Capacitance] =
        [
            new("F", 0, 1, "farad", "farads"),
            new("µF", -6, 1, "uF", "u"),
            new("nF", -9, 1, "n"),
            new("pF", -12, 1, "p"),
        ],
        [QuantityKind.Temperature] =
        [
            new("°C", 0, 1, "C", "degC", "celsius", "℃"),
            new("K", 0, 1, "kelvin") { Offset = -273.15 },
            new("°F", 0, 5.0 / 9, "F", "degF", "fahrenheit", "℉") { Offset = Temperature.FromDegreesFahrenheit(0).DegreesCelsius },
        ],
        [QuantityKind.Frequency] = [new("Hz", 0, 1), new("kHz", 3, 1, "k", "K"), new("MHz", 6, 1, "M")],
        [QuantityKind.Force] =
        [
            new("N", 0, 1),
            new("mN", -3, 1),
            new("cN", -2, 1),
            new("gf", -3, Force.FromKilogramsForce(1).Newtons, "g", "gram", "grams", "pond"),
            new("kgf", 0, Force.FromKilogramsForce(1).Newtons),
            new("ozf", 0, Force.FromOunceForce(1).Newtons, "oz"),
            new("lbf", 0, Force.FromPoundsForce(1).Newtons),
        ],
        [QuantityKind.Speed] = [new("rpm", 0, 1, "r/min", "1/min", "/min", "min⁻¹", "turns/min"), new("r/s", 0, 60, "rps", "1/s")],
        [QuantityKind.Mass] =
        [
            new("kg", 0, 1),
            new("g", -3, 1, "gram", "grams"),
            new("mg", -6, 1),
            new("lb", 0, Mass.FromPounds(1).Kilograms, "lbs", "pound", "pounds"),
            new("oz", 0, Mass.FromOunces(1).Kilograms),
        ],
        [QuantityKind.Fraction] = [new("%", -2, 1, "percent"), new("‰", -3, 1), new("ppm", -6, 1)],
        [QuantityKind.Conductivity] = [new("S/m", 0, 1), new("kS/m", 3, 1), new("MS/m", 6, 1)],
        [QuantityKind.FluxDensity] =
        [
            new("T", 0, 1, "tesla"),
            new("mT", -3, 1),
            new("µT", -6, 1, "uT"),
            new("G", 0, MagneticField.FromGausses(1).Teslas, "Gs", "gauss"),
            new("kG", 3, MagneticField.FromGausses(1).Teslas),
        ],
        [QuantityKind.Turns] = [new("turns", 0, 1, "turn", "t"), new("k", 3, 1, "K", "kt", "kturns", "kturn")],
        [QuantityKind.CapacitancePerLength] =
        [
            new("F/m", 0, 1),
            new("nF/m", -9, 1),
            new("pF/m", -12, 1),
            new("pF/ft", -12, 1 / Length.FromFeet(1).Meters, "pF/foot"),
        ],
        [QuantityKind.ResistancePerLength] =
        [
            new("Ω/m", 0, 1),
            new("mΩ/m", -3, 1),
            new("kΩ/m", 3, 1),
            new("Ω/km", -3, 1),
            new("kΩ/km", 0, 1),
            new("Ω/ft", 0, 1 / Length.FromFeet(1).Meters, "Ω/foot"),
            new("Ω/kft", -3, 1 / Length.FromFeet(1).Meters, "Ω/1000ft"),
        ],
        [QuantityKind.Voltage] = [new("V", 0, 1), new("mV", -3, 1), new("µV", -6, 1, "uV")],
        [QuantityKind.Duration] =
        [
            new("s", 0, 1, "sec", "seconds"),
            new("min", 0, 60, "minutes", "minute"),
            new("h", 0, 3600, "hours", "hour"),
            new("d", 0, 86400, "days", "day"),
        ],
    }.ToFrozenDictionary();

    private static readonly FrozenDictionary<QuantityKind, string> s_infix = new Dictionary<QuantityKind, string>
    {
        [QuantityKind.Resistance] = "RkKMmG",
        [QuantityKind.Inductance] = "Hmu",
        [QuantityKind.Capacitance] = "Funp",
        [QuantityKind.Frequency] = "kKM",
        [QuantityKind.Turns] = "kK",
    }.ToFrozenDictionary();

    public static IReadOnlyList<Unit> Of(QuantityKind kind) => s_units[kind];

    /// <summary>The unit that a letter in the place of the decimal point means, as in "7k43"; null when it means none.</summary>
    public static Unit? Infix(QuantityKind kind, char letter) =>
        s_infix.TryGetValue(kind, out string? letters) && letters.Contains(letter, StringComparison.Ordinal)
            ? Find(kind, letter.ToString())
            : null;

    /// <summary>Finds a unit by any spelling: exact first, then without regard to case if only one fits.</summary>
    public static Unit? Find(QuantityKind kind, string typed)
    {
        string key = Normalise(typed);
        Unit[] units = s_units[kind];
        Unit? exact = Array.Find(units, unit => Spelled(unit, key, StringComparison.Ordinal));
        if (exact is not null)
        {
            return exact;
        }

        Unit[] loose = Array.FindAll(units, unit => Spelled(unit, key, StringComparison.OrdinalIgnoreCase));
        return loose.Length == 1 ? loose[0] : null;
    }

    /// <summary>One spelling for signs that look alike: µ as u, ohm as Ω, no spaces.</summary>
    public static string Normalise(string text) =>
        text.Replace(" ", "", StringComparison.Ordinal)
            .Replace('µ', 'u')
            .Replace('μ', 'u')
            .Replace('\u2126', 'Ω')
            .Replace("ohms", "Ω", StringComparison.OrdinalIgnoreCase)
            .Replace("ohm", "Ω", StringComparison.OrdinalIgnoreCase);

    private static bool Spelled(Unit unit, string key, StringComparison comparison) =>
        string.Equals(Normalise(unit.Symbol), key, comparison)
        || Array.Exists(unit.Spellings, spelling => string.Equals(spelling, key, comparison));
}
