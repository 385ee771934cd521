using Coilwright.Workshop.Sets;
using Microsoft.Extensions.Primitives;

namespace Coilwright.Web.Forms;

/// <summary>The places of a set as the form's rows give them.</summary>
public static class SetForm
{
    /// <summary>The rows that name a recipe or a piece.</summary>
    /// <param name="names">Name of each place.</param>
    /// <param name="of">Recipe or serial of each place.</param>
    /// <param name="offsets">What is meant of each place.</param>
    public static IReadOnlyList<SetPlace> Places(StringValues names, StringValues of, StringValues offsets) =>
        [
            .. Enumerable
                .Range(0, of.Count)
                .Select(at => new SetPlace(At(names, at), At(of, at), At(offsets, at)))
                .Where(place => place.Of.Trim().Length > 0),
        ];

    private static string At(StringValues values, int at) => at < values.Count ? values[at] ?? "" : "";
}
