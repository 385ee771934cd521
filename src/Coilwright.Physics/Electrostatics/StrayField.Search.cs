namespace Coilwright.Physics.Electrostatics;

/// <summary>What a piece of a winding faces.</summary>
internal sealed partial class StrayField
{
    /// <summary>The nearest part straight below or above a point.</summary>
    private (StrayPart Part, double GapM)? Vertical(double xM, double yM, double zM, bool up)
    {
        (StrayPart, double)? nearest = null;
        double least = ReachM;
        foreach (StrayPart part in _parts)
        {
            double gapM = up ? part.FacingDownM - zM : zM - part.TopM;
            bool over = (part.IsCover ? part.Inside : part.Plan).DistanceM(xM, yM) <= 0;
            if (over && gapM > 0 && gapM < least && (up || !part.IsCover))
            {
                least = gapM;
                nearest = (part, gapM);
            }
        }

        return nearest;
    }

    private (StrayPart? Part, double GapM, double Share) Sideways(OutlinePoint point, double lowM, double stepM)
    {
        (StrayPart? Part, double GapM, double Share) nearest = (null, double.PositiveInfinity, 0);
        double least = ReachM;
        foreach (StrayPart part in _parts)
        {
            double share = Beside(lowM, stepM, part.BottomM, part.IsCover ? part.CeilingM : part.TopM);
            PlanOutline outline = part.IsCover ? part.Inside : part.Plan;
            double gapM = share > 0 ? outline.AlongM(point.XM, point.YM, point.NormalX, point.NormalY, least) : least;
            if (gapM < least)
            {
                least = gapM;
                nearest = (part, gapM, share);
            }
        }

        return nearest;
    }

    private (int Coil, double AwayM, double Share) Neighbour(int c, OutlinePoint point, double lowM, double stepM)
    {
        (int Coil, double AwayM, double Share) nearest = (-1, double.PositiveInfinity, 0);
        double least = ReachM;
        for (int other = 0; other < Bodies.Count; other++)
        {
            double share = other == c ? 0 : Beside(lowM, stepM, Bodies[other].BottomM, Bodies[other].TopM);
            double awayM = share > 0 ? Bodies[other].Outer.AlongM(point.XM, point.YM, point.NormalX, point.NormalY, least) : least;
            if (awayM < least)
            {
                least = awayM;
                nearest = (other, awayM, share);
            }
        }

        return nearest;
    }

    /// <summary>The highest part below that a quarter circle from the point ends on, with the length of the arc.</summary>
    private (StrayPart? Part, double ArcM) Under(OutlinePoint point, double zM)
    {
        StrayPart? found = null;
        double least = ReachM;
        foreach (StrayPart part in _parts)
        {
            double fallM = zM - part.TopM;
            double arcM = Math.PI / 2 * fallM;
            if (
                fallM > 0
                && !part.IsCover
                && arcM < least
                && part.Plan.DistanceM(point.XM + fallM * point.NormalX, point.YM + fallM * point.NormalY) <= 0
            )
            {
                (found, least) = (part, arcM);
            }
        }

        return found is null ? (null, double.PositiveInfinity) : (found, least);
    }
}
