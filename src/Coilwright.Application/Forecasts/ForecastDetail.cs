namespace Coilwright.Application.Forecasts;

/// <summary>What a forecast is asked for beside its numbers and its response.</summary>
[Flags]
public enum ForecastDetail
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The curves behind the pictures of the strings and the branch.</summary>
    Pictures = 1,

    /// <summary>The band that the response scatters in.</summary>
    Band = 2,
}
