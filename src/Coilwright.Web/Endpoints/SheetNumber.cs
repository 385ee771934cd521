using System.Globalization;

namespace Coilwright.Web.Endpoints;

/// <summary>Which sheet of a long list is asked for.</summary>
internal static class SheetNumber
{
    private const int Most = 10_000;

    /// <summary>The number, from 1; the first for anything that is none.</summary>
    public static int Of(string? typed) =>
        int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int sheet) && sheet is > 0 and < Most ? sheet : 1;
}
