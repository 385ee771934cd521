using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Forms;

/// <summary>What was typed into a form, so that a page can show it again beside what is wrong with it.</summary>
public sealed class FormValues(IFormCollection? form = null)
{
    /// <summary>Nothing typed yet.</summary>
    public static FormValues Nothing { get; } = new();

    /// <summary>Fields by name; of a name that comes several times every value, and of the entry's own id the last.</summary>
    public static FormValues Of(IReadOnlyList<(string Name, string Value)> fields) =>
        new(
            new FormCollection(
                fields
                    .GroupBy(field => field.Name, StringComparer.Ordinal)
                    .ToDictionary(
                        same => same.Key,
                        same =>
                            same.Key == "id"
                                ? new StringValues(same.Last().Value)
                                : new StringValues([.. same.Select(field => field.Value)])
                    )
            )
        );

    /// <summary>A field as typed, or the one of its two readings that was chosen; empty when it was neither.</summary>
    public string this[string field] =>
        form?[ChoiceOf(field)].ToString() is { Length: > 0 } chosen ? chosen : form?[field].ToString() ?? "";

    /// <summary>Name of the buttons that choose one of two readings of a field.</summary>
    public static string ChoiceOf(string field) => "reading of " + field;

    /// <summary>Every value of a field that may be ticked several times.</summary>
    public IReadOnlyList<string> All(string field) =>
        form is null ? [] : [.. form[field].Where(value => !string.IsNullOrWhiteSpace(value)).Select(value => value!)];

    /// <summary>The entry's own id, made by the page; a new one when it is missing.</summary>
    public Guid Id => Guid.TryParse(this["id"], out Guid made) ? made : Guid.NewGuid();
}
