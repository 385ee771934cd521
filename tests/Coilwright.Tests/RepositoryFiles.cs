namespace Coilwright.Tests;

/// <summary>Where the sources stand, found upward from the test program.</summary>
public static class RepositoryFiles
{
    public static string Root { get; } = FindRoot(AppContext.BaseDirectory);

    public static string PathOf(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>Files under a folder of the repository that a person wrote: nothing built, fetched or generated.</summary>
    public static IEnumerable<string> Written(string folder, params string[] extensions) =>
        Directory
            .EnumerateFiles(PathOf(folder), "*", SearchOption.AllDirectories)
            .Where(path => extensions.Contains(Path.GetExtension(path), StringComparer.Ordinal))
            .Where(path =>
                !Path.GetRelativePath(Root, path)
                    .Split(Path.DirectorySeparatorChar)
                    .Any(part => part is "bin" or "obj" or "node_modules" or "built")
            );

    private static string FindRoot(string start)
    {
        for (DirectoryInfo? folder = new(start); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new DirectoryNotFoundException("Coilwright.slnx stands nowhere above " + start);
    }
}
