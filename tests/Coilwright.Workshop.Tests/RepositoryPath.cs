namespace Coilwright.Workshop.Tests;

/// <summary>Files of the repository, found upwards from where the tests run.</summary>
internal static class RepositoryPath
{
    public static string Of(params string[] parts)
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Coilwright.slnx")))
        {
            at = at.Parent;
        }

        return Path.Combine([at!.FullName, .. parts]);
    }
}
