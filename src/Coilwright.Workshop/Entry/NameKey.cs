namespace Coilwright.Workshop.Entry;

/// <summary>When two names are one to a person: letter case and spaces do not tell them apart.</summary>
public static class NameKey
{
    /// <summary>The name as it is compared.</summary>
    public static string Of(string name) =>
        string.Join(' ', name.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ToUpperInvariant();

    /// <summary>True when both are one name.</summary>
    public static bool Same(string one, string other) => string.Equals(Of(one), Of(other), StringComparison.Ordinal);
}
