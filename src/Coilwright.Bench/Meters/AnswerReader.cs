using System.Globalization;
using System.Text.RegularExpressions;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Instruments;
using Coilwright.Workshop.Readings;

namespace Coilwright.Bench.Meters;

/// <summary>Reads the lines of one instrument by its profile.</summary>
/// <remarks>
/// Numbers as in <see cref="MeterLine"/> (IEEE 488.2, section 8.7, from memory), several of them with commas or semicolons between; a unit
/// may follow each number. Whatever cannot be read for sure is a fault, never a guess.
/// </remarks>
/// <param name="profile">How the instrument answers.</param>
public sealed partial class AnswerReader(MeterProfile profile)
{
    private const int LongestLine = 256;

    /// <summary>An exponent, no further digit or point, and a unit with or without a space before it.</summary>
    private const string AfterNumber = @"(?:[eE][+-]?[0-9]{1,3})?)(?![0-9.])(?: ?(?<u>[A-Za-zΩ\u2126µμ°℃℉%][A-Za-zΩ\u2126/]*))?";

    /// <summary>Kinds whose units are known when a meter is set to the wrong thing.</summary>
    private static readonly QuantityKind[] s_measured =
    [
        QuantityKind.Resistance,
        QuantityKind.Inductance,
        QuantityKind.Capacitance,
        QuantityKind.Temperature,
        QuantityKind.Frequency,
        QuantityKind.Voltage,
        QuantityKind.FluxDensity,
    ];

    private readonly double? _overload = Numeric(profile.Overload);

    /// <summary>The reading of a line.</summary>
    /// <param name="line">As it came, with or without its end.</param>
    /// <exception cref="InstrumentException">It is none.</exception>
    public MeterAnswer Read(string line)
    {
        string text = line.Trim();
        if (text.Length is 0 or > LongestLine || text.Any(sign => char.IsControl(sign) || sign == '\uFFFD'))
        {
            throw Nonsense("the instrument sent something that is no text: look at the line's speed and its wiring", text);
        }

        if (_overload is null && text.Contains(profile.Overload, StringComparison.OrdinalIgnoreCase))
        {
            return Answer(null, text);
        }

        Match number = Chosen(text);
        double value = Numeric(Digits(number)) ?? throw Nonsense("the number is none that can be", text);
        if (MeterLine.IsNotANumber(value))
        {
            throw Nonsense("the instrument says that it has no number (9.91E37): is its range or function set for this?", text);
        }

        return IsOverload(Math.Abs(value)) ? Answer(null, text) : Answer(UnitOf(number, text).ToSi(value), text);
    }

    private MeterAnswer Answer(double? value, string text) => new(profile.Quantity, profile.Kind, value, text);

    private Match Chosen(string text)
    {
        Match[] all = [.. (profile.HasDecimalComma ? CommaNumbers() : Numbers()).Matches(text).Cast<Match>()];
        if (all.Length == 0)
        {
            throw Nonsense($"the instrument sent \"{text}\", which holds no number", text);
        }

        if (profile.Place > all.Length)
        {
            string said = string.Create(
                CultureInfo.InvariantCulture,
                $"the instrument sent {all.Length} numbers, and number {profile.Place} is the reading"
            );
            throw Nonsense(said, text);
        }

        Match chosen = profile.Place == 0 ? all[^1] : all[profile.Place - 1];
        if (!profile.HasDecimalComma && !profile.IsPlaceCounted && EitherWay().IsMatch(text))
        {
            throw Nonsense($"\"{text}\" may be one number or two: the profile says it with \"decimal\": \"comma\" or \"number\": 1", text);
        }

        return chosen;
    }

    private string Digits(Match number) => profile.HasDecimalComma ? number.Groups["n"].Value.Replace(',', '.') : number.Groups["n"].Value;

    private bool IsOverload(double value) =>
        PossibleReading.IsOverRange(value) || (_overload is { } over && value >= Math.Abs(over) * (1 - 1e-6));

    /// <summary>The unit that follows the number, or the profile's.</summary>
    private Unit UnitOf(Match number, string text)
    {
        string word = number.Groups["u"].Value;
        if (word.Length == 0)
        {
            return profile.Unit;
        }

        if (profile.Words.TryGetValue(word, out Unit? own))
        {
            return own ?? profile.Unit;
        }

        return UnitTable.Find(profile.Kind, word) ?? throw WrongUnit(word, text);
    }

    private InstrumentException WrongUnit(string word, string text)
    {
        string needed = QuantityParser.UnitsOf(profile.Kind);
        bool isOther = s_measured.Any(kind => kind != profile.Kind && UnitTable.Find(kind, word) is not null);
        string why = isOther
            ? $"the instrument measures something else: it answered in {word}, and {needed} are wanted here"
            : $"\"{word}\" after the number is no unit that is known here ({needed}); the profile can name it under \"words\"";
        return new InstrumentException(InstrumentTrouble.WrongUnit, why, text);
    }

    private static InstrumentException Nonsense(string message, string text) => new(InstrumentTrouble.Nonsense, message, text);

    private static double? Numeric(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;

    [GeneratedRegex(@"(?<![\w.])(?<n>[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)" + AfterNumber)]
    private static partial Regex Numbers();

    [GeneratedRegex(@"(?<![\w.,])(?<n>[+-]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)" + AfterNumber)]
    private static partial Regex CommaNumbers();

    /// <summary>Two whole numbers with nothing but a comma between: "6,182".</summary>
    [GeneratedRegex(@"^[+-]?[0-9]+,[0-9]+(?: ?[A-Za-zΩ\u2126µμ°℃℉%/]+)?$")]
    private static partial Regex EitherWay();
}
