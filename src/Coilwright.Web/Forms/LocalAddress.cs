namespace Coilwright.Web.Forms;

/// <summary>The address that a form asks to go back to.</summary>
internal static class LocalAddress
{
    /// <summary>An address of this shop as a header may carry it; the first page when it is none.</summary>
    public static string From(string typed)
    {
        bool isPath = typed is "/" or ['/', not '/', ..];
        bool isOurs = isPath && !typed.Contains('\\', StringComparison.Ordinal) && !typed.Any(char.IsControl);
        return isOurs && Uri.TryCreate("http://localhost" + typed, UriKind.Absolute, out Uri? address) && address.Host == "localhost"
            ? address.PathAndQuery
            : "/";
    }
}
