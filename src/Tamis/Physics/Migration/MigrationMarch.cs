namespace Tamis.Physics;

/// <summary>How finely the march looks: more of each is slower and nearer.</summary>
/// <param name="CellsPerLayer">Cells in each layer, from 2 to 1000. The error falls with their square.</param>
/// <param name="Steps">Steps in time, from 1 to 1,000,000. They start short and grow; the error falls with their number.</param>
public sealed record MigrationDetail(int CellsPerLayer = 24, int Steps = 400)
{
    /// <summary>Instants, in days, for which the water activity through the stack is kept; empty for five spread over the time.</summary>
    public IReadOnlyList<double> ProfileDays { get; init; } = [];
}

/// <summary>Water on its way through a stack: finite volumes in the thickness, implicit in time, so that no water comes or goes and no step is too long to be stable.</summary>
/// <remarks>In a layer water flows down its own content with the layer's diffusivity; where layers meet, both faces come to one water activity, or differ by what the film between them takes. The water of each cell is set by its flows alone, so that water is conserved to the rounding of the machine however far the iteration went.</remarks>
internal sealed class MigrationMarch
{
    private const double SecondsPerDay = 86400, MetresPerMillimetre = 1e-3, KilogramsPerCubicMetre = 1000;
    private const int MostIterations = 40, MostHalvings = 20;

    private readonly WaterStack _stack;
    private readonly int _cellsPerLayer, _cells;
    private readonly double[] _drySolids, _cellConductance;
    private readonly (double Covered, double Bare)[] _films;
    private readonly double[] _water, _trial, _flow, _rise, _fall, _lower, _diagonal, _upper, _right;

    public MigrationMarch(WaterStack stack, int cellsPerLayer)
    {
        (_stack, _cellsPerLayer, _cells) = (stack, cellsPerLayer, stack.Layers.Count * cellsPerLayer);
        _drySolids = [.. stack.Layers.Select(layer => layer.DryGramsPerMillilitre * KilogramsPerCubicMetre * layer.ThicknessMillimetres * MetresPerMillimetre / cellsPerLayer)];
        _cellConductance = [.. stack.Layers.Select(layer => layer.DryGramsPerMillilitre * KilogramsPerCubicMetre * layer.Diffusivity.Value / (layer.ThicknessMillimetres * MetresPerMillimetre / cellsPerLayer))];
        _films = [.. stack.Films.Select(film => (film.Conductance(stack.TemperatureCelsius), film.BareShare))];
        _water = [.. stack.Layers.SelectMany(layer => Enumerable.Repeat(layer.WaterGramsPerGramDry, cellsPerLayer))];
        (_trial, _lower, _diagonal, _upper, _right) = (new double[_cells], new double[_cells], new double[_cells], new double[_cells], new double[_cells]);
        (_flow, _rise, _fall) = (new double[_cells + 1], new double[_cells + 1], new double[_cells + 1]);
        SetFlows(_water);
    }

    /// <summary>The water of each cell, kg per kg of dry matter, lowest cell first.</summary>
    public ReadOnlySpan<double> Water => _water;

    /// <summary>The water that came in from the air so far, kg/m².</summary>
    public double FromAirKilogramsPerSquareMetre { get; private set; }

    /// <summary>The water in a layer, kg/m².</summary>
    public double LayerKilogramsPerSquareMetre(int layer)
    {
        double sum = 0;
        for (var i = layer * _cellsPerLayer; i < (layer + 1) * _cellsPerLayer; i++) sum += _water[i];
        return sum * _drySolids[layer];
    }

    /// <summary>The water activities of a layer's lower and upper face, by the flows of the last step.</summary>
    public (double Lower, double Upper) Faces(int layer)
    {
        var (first, last) = (layer * _cellsPerLayer, (layer + 1) * _cellsPerLayer - 1);
        var isotherm = _stack.Layers[layer].Isotherm;
        return (isotherm.WaterActivity(_water[first] + _flow[first] / (2 * _cellConductance[layer])), isotherm.WaterActivity(_water[last] - _flow[last + 1] / (2 * _cellConductance[layer])));
    }

    /// <summary>Goes on by some days.</summary>
    /// <exception cref="InvalidOperationException">No step is short enough to come to an answer.</exception>
    public void Advance(double days) => Advance(days * SecondsPerDay, MostHalvings);

    private void Advance(double seconds, int halvings)
    {
        if (TryStep(seconds)) return;
        if (halvings == 0) throw new InvalidOperationException("Water between the layers does not come to an answer; an isotherm may be too steep.");
        Advance(seconds / 2, halvings - 1);
        Advance(seconds / 2, halvings - 1);
    }

    private bool TryStep(double seconds)
    {
        Array.Copy(_water, _trial, _cells);
        for (var iteration = 0; iteration < MostIterations; iteration++)
        {
            SetFlows(_trial);
            if (Correct(seconds) > 1e-11) continue;
            SetFlows(_trial);
            return TryTake(seconds);
        }
        return false;
    }

    // The cells take what the flows bring: whatever one gives, its neighbour gets.
    private bool TryTake(double seconds)
    {
        for (var i = 0; i < _cells; i++)
        {
            _right[i] = _water[i] + seconds * (_flow[i] - _flow[i + 1]) / _drySolids[i / _cellsPerLayer];
            if (!(_right[i] >= 0)) return false;
        }
        Array.Copy(_right, _water, _cells);
        FromAirKilogramsPerSquareMetre += seconds * (_flow[0] - _flow[_cells]);
        return true;
    }

    // One Newton step on the water of all cells; the largest change against the water of its cell.
    private double Correct(double seconds)
    {
        for (var i = 0; i < _cells; i++)
        {
            var dry = _drySolids[i / _cellsPerLayer];
            _right[i] = -(dry * (_trial[i] - _water[i]) - seconds * (_flow[i] - _flow[i + 1]));
            _lower[i] = -seconds * _rise[i];
            _diagonal[i] = dry + seconds * (_fall[i] + _rise[i + 1]);
            _upper[i] = -seconds * _fall[i + 1];
        }
        for (var i = 1; i < _cells; i++)
        {
            var factor = _lower[i] / _diagonal[i - 1];
            _diagonal[i] -= factor * _upper[i - 1];
            _right[i] -= factor * _right[i - 1];
        }
        double largest = 0, change = 0;
        for (var i = _cells - 1; i >= 0; i--)
        {
            change = (_right[i] - (i == _cells - 1 ? 0 : _upper[i] * change)) / _diagonal[i];
            var next = Math.Max(_trial[i] + change, _trial[i] / 10);
            largest = Math.Max(largest, Math.Abs(next - _trial[i]) / (next + 1e-6));
            _trial[i] = next;
        }
        return largest;
    }

    private void SetFlows(double[] water)
    {
        Set(0, Edge(_stack.Under, water[0], 0, isUnder: true));
        Set(_cells, Edge(_stack.Over, water[_cells - 1], _stack.Layers.Count - 1, isUnder: false));
        for (var i = 1; i < _cells; i++)
        {
            var layer = i / _cellsPerLayer;
            if (i % _cellsPerLayer != 0)
            {
                var conductance = _cellConductance[layer];
                Set(i, new(conductance * (water[i - 1] - water[i]), conductance, conductance));
            }
            else
            {
                Set(i, Meeting(layer - 1, water[i - 1], water[i]));
            }
        }
    }

    private Contact Meeting(int below, double waterBelow, double waterAbove)
    {
        Contact.Side first = new(_stack.Layers[below].Isotherm, waterBelow, 2 * _cellConductance[below]);
        Contact.Side second = new(_stack.Layers[below + 1].Isotherm, waterAbove, 2 * _cellConductance[below + 1]);
        var (conductance, bare) = _films[below];
        if (double.IsInfinity(conductance)) return Contact.Between(first, second, conductance);
        var covered = Contact.Between(first, second, conductance);
        if (bare == 0) return covered;
        var open = Contact.Between(first, second, double.PositiveInfinity);
        return new((1 - bare) * covered.Flow + bare * open.Flow, (1 - bare) * covered.Rise + bare * open.Rise, (1 - bare) * covered.Fall + bare * open.Fall);
    }

    private Contact Edge(SurroundingAir? air, double water, int layer, bool isUnder)
    {
        if (air is null) return default;
        Contact.Side inside = new(_stack.Layers[layer].Isotherm, water, 2 * _cellConductance[layer]), outside = new(null, air.WaterActivity, 0);
        var conductance = air.Conductance(_stack.TemperatureCelsius);
        return isUnder ? Contact.Between(outside, inside, conductance) : Contact.Between(inside, outside, conductance);
    }

    private void Set(int face, Contact contact) => (_flow[face], _rise[face], _fall[face]) = (contact.Flow, contact.Rise, contact.Fall);
}
