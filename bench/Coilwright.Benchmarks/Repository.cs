namespace Coilwright.Benchmarks;

/// <summary>Where the repository lies.</summary>
internal static class Repository
{
    /// <summary>The folder above the program that holds the solution.</summary>
    public static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coilwright.slnx")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("Run the benchmarks inside the repository.");
    }
}
