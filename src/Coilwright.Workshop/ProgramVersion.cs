using System.Reflection;

namespace Coilwright.Workshop;

/// <summary>Which version of the program this is, as it stands in records and backups.</summary>
public static class ProgramVersion
{
    /// <summary>"0.1.0": without the commit that it was built from.</summary>
    public static string Text { get; } =
        typeof(ProgramVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0]
        ?? "";
}
