namespace Tamis.Physics;

/// <summary>The flow of water between two cells that meet: a half cell on either side and a film between, with the water activities of both faces.</summary>
/// <param name="Flow">From the first to the second, kg/(m²·s).</param>
/// <param name="Rise">How the flow grows with the water of the first cell, per kg per kg.</param>
/// <param name="Fall">How it falls with the water of the second.</param>
internal readonly record struct Contact(double Flow, double Rise, double Fall)
{
    /// <summary>A side of a contact: a half cell of a layer, or air that stays as it is.</summary>
    /// <param name="Isotherm">Of the layer; null for air.</param>
    /// <param name="Water">The water of the cell, kg per kg of dry matter; for air its water activity.</param>
    /// <param name="Conductance">From the middle of the cell to its face, kg/(m²·s) per kg per kg.</param>
    internal readonly record struct Side(SorptionIsotherm? Isotherm, double Water, double Conductance)
    {
        public double FaceWater(double outflow) => Isotherm is null ? Water : Water - outflow / Conductance;

        public double FaceActivity(double outflow) => Isotherm?.WaterActivity(FaceWater(outflow)) ?? Water;

        // How fast the face's activity falls with what flows out of it.
        public double FaceSlope(double outflow) => Isotherm is null ? 0 : Isotherm.SlopePerGramPerGram(Math.Max(FaceWater(outflow), 0));
    }

    /// <summary>The flow at which the water activities of both faces differ by just what the film takes.</summary>
    /// <param name="first">The side that the flow leaves.</param>
    /// <param name="second">The side that it enters.</param>
    /// <param name="filmConductance">Of the film, kg/(m²·s) per unit of water activity: infinite for none, 0 for a seal.</param>
    public static Contact Between(in Side first, in Side second, double filmConductance)
    {
        if (filmConductance == 0) return default;
        var filmResistance = 1 / filmConductance;
        // No face can give more water than would leave it dry, so the flow lies between these; the gap falls steadily from one to the other.
        double low = second.Isotherm is null ? -Reach(first, second, filmConductance) : -second.Conductance * second.Water;
        double high = first.Isotherm is null ? Reach(second, first, filmConductance) : first.Conductance * first.Water;
        var flow = Math.Clamp(0.0, low, high);
        // The flow need not be finer than this: whatever it is, one cell gives what the other takes.
        var enough = 1e-13 * (high - low);
        double slope1 = 0, slope2 = 0;
        for (var i = 0; i < 200; i++)
        {
            var gap = first.FaceActivity(flow) - second.FaceActivity(-flow) - flow * filmResistance;
            if (gap > 0) low = flow; else high = flow;
            slope1 = first.FaceSlope(flow);
            slope2 = second.FaceSlope(-flow);
            var steep = Steep(first, slope1) + Steep(second, slope2) + filmResistance;
            var next = flow + gap / steep;
            if (!(next >= low && next <= high)) next = low + (high - low) / 2;
            var done = Math.Abs(next - flow) <= enough || high - low <= enough;
            flow = next;
            if (done) break;
        }
        var sum = Steep(first, slope1) + Steep(second, slope2) + filmResistance;
        return new(flow, slope1 / sum, slope2 / sum);
    }

    private static double Steep(in Side side, double slope) => side.Isotherm is null ? 0 : slope / side.Conductance;

    // The most that air can give: what flows when the face of the layer is quite dry. Where nothing lies between, the half cell alone decides.
    private static double Reach(in Side layer, in Side air, double filmConductance) =>
        double.IsInfinity(filmConductance)
            ? layer.Conductance * Math.Max((layer.Isotherm?.WaterGramsPerGramDry(air.Water) ?? 0) - layer.Water, 0)
            : air.Water * filmConductance;
}
