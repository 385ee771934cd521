using System.Text.Json;
using System.Text.Json.Serialization;
using Coilwright.Physics;

namespace Coilwright.Analysis.Forecasts.Sizes;

/// <summary>
/// What the field's answer to a change of lengths depends on, as a text: all of the model but wire, lay, load and temperature.
/// </summary>
internal static class GeometryKey
{
    private static readonly JsonSerializerOptions s_all = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>The text of a pickup.</summary>
    /// <param name="scene">The solved pickup.</param>
    /// <param name="builds">Rungs of its builds, m.</param>
    /// <param name="turns">Rungs of its turns over those of the first coil.</param>
    public static string Of(ForecastScene scene, double[] builds, double[] turns)
    {
        PickupModel model = scene.Model;
        return JsonSerializer.Serialize(
            new
            {
                builds,
                turns,
                Coils = model.Coils.Select(coil => new
                {
                    coil.Bobbin,
                    coil.Poles,
                    coil.Position,
                    coil.Hot,
                    coil.TapeM,
                    coil.TapePermittivity,
                    coil.Winding.Direction,
                    Counts = coil.Winding.MeasuredCapacitanceF is null,
                    Follows = coil.Winding.MeasuredBuildM is null,
                }),
                model.Bars,
                model.Sheets,
                model.Connection,
                model.GapPermittivity,
                model.Strings,
                Sizes = model
                    .Sizes.Where(size => !size.Estimate.IsExact)
                    .Select(size => new
                    {
                        size.Kind,
                        size.Part,
                        size.Row,
                    }),
                WithStrings = scene.Strings is not null,
                Jig = scene.Poles?.JigM,
            },
            s_all
        );
    }
}
