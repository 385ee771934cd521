using System.Globalization;

namespace Coilwright.Workshop.Entry;

/// <summary>How long a short text may be that is kept with an entry for good. One place for pages, API and commands.</summary>
/// <param name="Field">Its field.</param>
/// <param name="Name">What it is, in workshop words.</param>
/// <param name="Most">Most letters.</param>
public sealed record TextLimit(string Field, string Name, int Most)
{
    private const int MostOfTag = 40,
        MostOfName = 80,
        MostOfWords = 1000;

    private static readonly TextLimit[] s_all =
    [
        new("tag", "the tag", MostOfTag),
        new("person", "the person's name", MostOfName),
        new("limits-person", "the person's name", MostOfName),
        new("instrument", "the instrument's name", MostOfName),
        new("reason", "the reason", MostOfWords),
        new("undo-reason", "the reason", MostOfWords),
        new("why", "the reason", MostOfWords),
        new("note", "the note", MostOfWords),
    ];

    /// <summary>The coil's tag.</summary>
    public static TextLimit Tag => s_all[0];

    /// <summary>What a person is told of it.</summary>
    public string Allowed => string.Create(CultureInfo.InvariantCulture, $"up to {Most} letters on one line");

    /// <summary>The limit of a field, its name with or without the dashes of an option; null for a field that has its own rule.</summary>
    public static TextLimit? Of(string field) =>
        Array.Find(s_all, limit => string.Equals(limit.Field, field.TrimStart('-'), StringComparison.OrdinalIgnoreCase));

    /// <summary>What is wrong with fields that have such a limit; empty when nothing is.</summary>
    public static IEnumerable<Problem> Check(IEnumerable<(string Field, string? Text)> fields) =>
        fields.Select(one => Of(one.Field)?.Check(one.Text) is { } problem ? problem with { Field = one.Field } : null).OfType<Problem>();

    /// <summary>What is wrong with a text; null when nothing is. That one must be given is another rule.</summary>
    public Problem? Check(string? text)
    {
        string typed = text?.Trim() ?? "";
        if (typed.Length > Most)
        {
            string tooLong = string.Create(CultureInfo.InvariantCulture, $"{Name} is too long: {typed.Length:#,0} letters");
            return new Problem(Field, tooLong, null, Allowed);
        }

        return typed.Any(char.IsControl)
            ? new Problem(Field, $"{Name} holds a line break or another character that cannot be written", null, Allowed)
            : null;
    }
}
