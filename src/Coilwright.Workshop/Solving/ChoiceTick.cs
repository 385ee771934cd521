using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Solving;

/// <summary>A tick of a form: something that may change, with the ends or the names that were given.</summary>
/// <param name="Offered">What may change.</param>
/// <param name="Ticked">True where it may.</param>
/// <param name="From">Lower end as typed; empty for the usual one.</param>
/// <param name="To">Upper end as typed; empty for the usual one.</param>
/// <param name="Names">Keys that were ticked of its list; none for the usual ones.</param>
public sealed record ChoiceTick(OfferedChoice Offered, bool Ticked, string From, string To, IReadOnlyList<string> Names)
{
    /// <summary>As it is typed at the command line: "turns=5000..9000".</summary>
    public string Text =>
        (Names.Count > 0, From.Length + To.Length > 0) switch
        {
            (true, _) => $"{Offered.Key}={string.Join('/', Names)}",
            (_, true) => $"{Offered.Key}={End(From, Offered.From)}..{End(To, Offered.To)}",
            _ => Offered.Key,
        };

    /// <summary>Ticks of everything offered, from the text of a question.</summary>
    public static IReadOnlyList<ChoiceTick> Of(IReadOnlyList<OfferedChoice> offered, string text)
    {
        (Choice? What, string Given)[] parts =
        [
            .. text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(DesignVariableParser.Split),
        ];
        return [.. offered.Select(one => Of(one, parts.FirstOrDefault(part => part.What == one.What)))];
    }

    /// <summary>What may change, as text; problems are noted with their name.</summary>
    public static string Read(IReadOnlyList<ChoiceTick> ticks, ICollection<Problem> problems)
    {
        ChoiceTick[] ticked = [.. ticks.Where(tick => tick.Ticked)];
        if (ticked.Length == 0)
        {
            problems.Add(new Problem("vary", "tick at least one thing that may change"));
        }

        foreach (ChoiceTick tick in ticked)
        {
            DesignVariableParser.Read(tick.Offered.Key, tick.Text, problems);
        }

        return string.Join(", ", ticked.Select(tick => tick.Text));
    }

    private static ChoiceTick Of(OfferedChoice offered, (Choice? What, string Given) part)
    {
        string[] ends = offered.IsRange ? part.Given?.Split("..", 2, StringSplitOptions.TrimEntries) ?? [] : [],
            names = offered.IsRange
                ? []
                : part.Given?.Split(['/', '|'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) ?? [];
        return new ChoiceTick(
            offered,
            part.What is not null,
            ends.Length == 2 ? ends[0] : "",
            ends.Length == 2 ? ends[1] : "",
            [.. names.Select(name => KeyLabels.KeyOf(name, offered.Names))]
        );
    }

    /// <summary>An end as the text of a question holds it, in which a comma parts one choice from the next.</summary>
    private string End(string typed, string usual)
    {
        string text = typed.Length > 0 ? typed : usual;
        QuantityKind kind = Offered.Unit.Length == 0 ? QuantityKind.Turns : QuantityKind.Length;
        string whole = CountParser.TryNumber(text, out _) ? $"{text} {Offered.Unit}".Trim() : text;
        if (!QuantityParser.TryParse(whole, kind, unitRequired: false, out Entered read, out _))
        {
            return text.Replace(',', ' ');
        }

        return kind == QuantityKind.Turns ? read.Si.ToString("0.##", CultureInfo.InvariantCulture) : RecipeEdit.Millimetres(read.Si);
    }
}
