namespace Tamis.Production;

/// <summary>Something that would have to give way for a plan to be possible.</summary>
/// <param name="Minutes">By how much.</param>
public abstract record Relaxation(int Minutes);

/// <summary>All is done later than it is due.</summary>
/// <param name="Minutes">By how much.</param>
/// <param name="EndMinutes">When it is done, minutes from the start of the plan.</param>
public sealed record DoneLater(int Minutes, int EndMinutes) : Relaxation(Minutes);

/// <summary>Somebody comes before their shift.</summary>
/// <param name="Person">Who.</param>
/// <param name="Minutes">By how much.</param>
/// <param name="ShiftMinutes">When the shift begins, minutes from the start of the plan.</param>
public sealed record ComeEarlier(string Person, int Minutes, int ShiftMinutes) : Relaxation(Minutes);

/// <summary>Somebody stays after their shift.</summary>
/// <param name="Person">Who.</param>
/// <param name="Minutes">By how much.</param>
/// <param name="ShiftMinutes">When the shift ends, minutes from the start of the plan.</param>
public sealed record StayLonger(string Person, int Minutes, int ShiftMinutes) : Relaxation(Minutes);

/// <summary>A task takes less than the longest of its written times.</summary>
/// <param name="Task">The task.</param>
/// <param name="Minutes">By how much.</param>
/// <param name="PlannedMinutes">What was planned.</param>
public sealed record Faster(string Task, int Minutes, int PlannedMinutes) : Relaxation(Minutes);

/// <summary>Something is kept longer than it may be.</summary>
/// <param name="Before">The task that makes it.</param>
/// <param name="After">The task that takes it.</param>
/// <param name="Minutes">By how much.</param>
public sealed record KeptLonger(string Before, string After, int Minutes) : Relaxation(Minutes);

/// <summary>There is once more of a thing.</summary>
/// <param name="Resource">The thing.</param>
public sealed record OneMore(string Resource) : Relaxation(0);

/// <summary>One way to make a plan possible.</summary>
/// <param name="Gives">What gives way, together.</param>
/// <param name="IsSmallest">Whether no smaller way of this kind is possible; false where the search ended before that was proven.</param>
/// <param name="Schedule">The plan that it makes possible.</param>
public sealed record WayOut(IReadOnlyList<Relaxation> Gives, bool IsSmallest, WorkSchedule Schedule)
{
    /// <summary>By how much all that gives way does, in minutes.</summary>
    public int Minutes => Gives.Sum(each => each.Minutes);
}
