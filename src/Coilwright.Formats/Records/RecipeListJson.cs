using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Formats.Records;

/// <summary>Writes the newest revision of every recipe as a bare list; one that cannot be read says why.</summary>
public static class RecipeListJson
{
    /// <summary>Writes the list.</summary>
    /// <param name="newest">The newest revisions.</param>
    /// <param name="unreadable">Those that cannot be read.</param>
    public static string Write(IReadOnlyList<RevisionRecord> newest, IReadOnlyList<UnreadableRecord> unreadable) =>
        JsonListWriter.Write(
            newest.Select(one => new
            {
                name = one.RecipeName,
                revision = one.Letter,
                state = StateOf(one),
                person = one.Person,
                time = one.TimeUtc,
                unreadable = unreadable.FirstOrDefault(fault => fault.Id == one.RecipeId)?.Why,
            })
        );

    /// <summary>A revision's state as the list says it.</summary>
    public static string StateOf(RevisionRecord revision) => revision.State == RevisionState.Released ? "released" : "draft";
}
