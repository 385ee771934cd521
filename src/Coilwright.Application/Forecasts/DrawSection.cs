using Coilwright.Papers.Figures;
using Coilwright.Physics;
using Coilwright.Physics.Winding;
using Coilwright.Workshop.Recipes;

namespace Coilwright.Application.Forecasts;

/// <summary>A person looks at a coil in section, turn by turn.</summary>
public sealed class DrawSection
{
    private const ulong Seed = 1;

    /// <summary>The drawing as SVG; null when the recipe has no such coil.</summary>
    /// <param name="recipe">The recipe.</param>
    /// <param name="coil">Place of the coil.</param>
    public string? Draw(Recipe recipe, int coil)
    {
        PickupModel model = RecipeModelBuilder.ToModel(recipe);
        return coil >= 0 && coil < model.Coils.Count ? Draw(model.Coils[coil], CoverInSection.Of(model, coil)) : null;
    }

    private static string Draw(CoilModel coil, CoverInSection? cover)
    {
        double overallM = coil.Wire.OverallDiameterM.Value;
        WindingModel winding = coil.Winding;
        LaySpec spec = new(
            overallM,
            coil.Bobbin.WindingHeightM,
            (int)Math.Round(winding.Turns),
            winding.PitchM ?? LayForecast.DefaultPitchM(winding.Lay, overallM),
            winding.JitterM ?? LayForecast.DefaultJitterM(winding.Lay)
        );
        return CoilSectionFigure.Svg(LaySimulation.Run(spec, Seed), coil.Bobbin, coil.Wire.BareDiameterM.Value, overallM, cover);
    }
}
