using Tamis.Production;
using Tamis.Tables;

namespace Tamis.Desserts;

/// <summary>What stands in the way of the order of a dessert though every sheet can be read: an insert that does not fit, a circle in the order, a component without a density, an oven that nobody has, a region whose seasons nobody knows.</summary>
public static class OrderProblems
{
    /// <summary>The cells that must be mended before the trial that is ordered can be put together and planned; none where all is well. What is only missing is no such cell.</summary>
    public static IReadOnlyList<CellProblem> Of(Dessert dessert)
    {
        List<CellProblem> problems = [];
        Look(() => dessert.PieceOf(dessert.Candidate));
        // The plan stands on the piece: what is wrong there would be named twice.
        if (problems.Count == 0) Look(() => PlanOfWork.HandsMinutes(dessert, dessert.Candidate, (int)Math.Ceiling(dessert.WantedPieces(dessert.Candidate))));
        Look(() => Substitutes.RegionOf(dessert, dessert.Candidate));
        return problems;

        void Look(Action read)
        {
            try
            {
                read();
            }
            catch (TableException bad)
            {
                problems.AddRange(bad.Problems.Where(problem => problem.Row > 0));
            }
            catch (OrderException)
            {
                // A mass that nobody knows, or equipment too small for one make: the pages say so, and there is no cell to mend.
            }
        }
    }
}
