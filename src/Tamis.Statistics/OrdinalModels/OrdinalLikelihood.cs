using MathNet.Numerics.LinearAlgebra;

namespace Tamis.Statistics.OrdinalModels;

/// <summary>The log likelihood of a cumulative-link model, integrated over the random intercept by adaptive Gauss–Hermite quadrature.</summary>
/// <remarks>
/// Parameters are the first threshold, the logarithms of the gaps from each threshold to the next, the coefficients and, with groups, the
/// logarithm of the intercepts' standard deviation: however close two thresholds come, no step takes them out of order. The nodes of each
/// group stand about the mode of its intercept; one node is Laplace's approximation (Liu and Pierce 1994, Biometrika 81).
/// </remarks>
internal sealed class OrdinalLikelihood(OrdinalLink link, int[] classes, int classCount, double[][] columns, int[][] groups, int points)
{
    private readonly (double Node, double LogWeight)[] _nodes = Nodes(points);

    // The search asks for neighbouring parameters, whose modes lie near the last ones found.
    private readonly double[] _modes = new double[groups.Length];

    public int ThresholdCount => classCount - 1;

    public bool HasGroups => groups.Length > 0;

    public int ParameterCount => ThresholdCount + columns.Length + (HasGroups ? 1 : 0);

    /// <summary>The same parameters with the thresholds themselves in place of their gaps.</summary>
    public double[] WithThresholds(double[] free)
    {
        double[] parameters = [.. free];
        for (var j = 1; j < ThresholdCount; j++) parameters[j] = parameters[j - 1] + Math.Exp(free[j]);
        return parameters;
    }

    /// <summary>The same parameters with the logarithms of gaps in place of all thresholds but the first.</summary>
    public double[] WithGaps(double[] parameters)
    {
        double[] free = [.. parameters];
        for (var j = 1; j < ThresholdCount; j++) free[j] = Math.Log(parameters[j] - parameters[j - 1]);
        return free;
    }

    /// <summary>The log likelihood, of free parameters; −∞ where a class has no probability left.</summary>
    public double At(double[] free)
    {
        var parameters = WithThresholds(free);
        var shift = new double[classes.Length];
        for (var j = 0; j < columns.Length; j++)
            for (var row = 0; row < shift.Length; row++) shift[row] += columns[j][row] * parameters[ThresholdCount + j];
        if (!HasGroups) return Enumerable.Range(0, shift.Length).Sum(row => Math.Log(Share(parameters, row, shift[row])));
        var deviation = Math.Exp(parameters[^1]);
        double sum = 0;
        for (var group = 0; group < groups.Length; group++) sum += OfGroup(parameters, group, shift, deviation);
        return sum;
    }

    private double OfGroup(double[] parameters, int group, double[] shift, double deviation)
    {
        var rows = groups[group];
        var (mode, curvature) = Mode(parameters, rows, shift, deviation, _modes[group]);
        _modes[group] = double.IsFinite(mode) ? mode : 0;
        if (!double.IsFinite(curvature)) return double.NegativeInfinity;
        var spread = 1 / Math.Sqrt(curvature);
        var terms = new double[_nodes.Length];
        for (var k = 0; k < terms.Length; k++)
            terms[k] = _nodes[k].LogWeight + Joint(parameters, rows, shift, deviation, mode + spread * _nodes[k].Node);
        var largest = terms.Max();
        return double.IsNegativeInfinity(largest) ? largest : Math.Log(spread) + largest + Math.Log(terms.Sum(term => Math.Exp(term - largest)));
    }

    // Newton's steps, halved while they lose: the joint density is log-concave for both links.
    private (double Mode, double Curvature) Mode(double[] parameters, int[] rows, double[] shift, double deviation, double start)
    {
        var (mode, value) = (start, Joint(parameters, rows, shift, deviation, start));
        if (!double.IsFinite(value)) (mode, value) = (0, Joint(parameters, rows, shift, deviation, 0));
        for (var round = 0; ; round++)
        {
            var (slope, curvature) = (-mode, 1.0);
            foreach (var row in rows)
            {
                var (first, second) = Derivatives(parameters, row, shift[row] + deviation * mode);
                slope += deviation * first;
                curvature -= deviation * deviation * second;
            }
            var step = slope / curvature;
            if (round == 50 || !(Math.Abs(step) > 1e-9)) return (mode, curvature);
            var tried = Joint(parameters, rows, shift, deviation, mode + step);
            for (var halving = 0; halving < 30 && !(tried >= value - 1e-12 * Math.Abs(value)); halving++)
                tried = Joint(parameters, rows, shift, deviation, mode + (step /= 2));
            (mode, value) = (mode + step, tried);
        }
    }

    private double Joint(double[] parameters, int[] rows, double[] shift, double deviation, double intercept)
    {
        var sum = -intercept * intercept / 2;
        foreach (var row in rows) sum += Math.Log(Share(parameters, row, shift[row] + deviation * intercept));
        return sum;
    }

    private double Share(double[] parameters, int row, double shift)
    {
        var (low, high) = Limits(parameters, row, shift);
        return link.Between(low, high);
    }

    private (double First, double Second) Derivatives(double[] parameters, int row, double shift)
    {
        var (low, high) = Limits(parameters, row, shift);
        var share = link.Between(low, high);
        var first = -(link.Density(high) - link.Density(low)) / share;
        return (first, (link.Slope(high) - link.Slope(low)) / share - first * first);
    }

    private (double Low, double High) Limits(double[] parameters, int row, double shift) =>
        (classes[row] == 0 ? double.NegativeInfinity : parameters[classes[row] - 1] - shift,
            classes[row] == classCount - 1 ? double.PositiveInfinity : parameters[classes[row]] - shift);

    // Golub and Welsch (1969, Mathematics of Computation 23): nodes are eigenvalues of the recurrence of the Hermite polynomials that are
    // orthogonal under the normal density. The weight carries the factor by which the adapted integrand is divided.
    private static (double Node, double LogWeight)[] Nodes(int points)
    {
        var recurrence = Matrix<double>.Build.Dense(points, points, (i, j) => Math.Abs(i - j) == 1 ? Math.Sqrt(Math.Max(i, j)) : 0);
        var eigen = recurrence.Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, points).Select(k => (eigen.EigenValues[k].Real,
            2 * Math.Log(Math.Abs(eigen.EigenVectors[0, k])) + eigen.EigenValues[k].Real * eigen.EigenValues[k].Real / 2))];
    }
}
