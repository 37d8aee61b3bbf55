namespace Tamis.Views;

/// <summary>The words around what models say, in one language.</summary>
public sealed record PhysicsWords
{
    /// <summary>The unit of hours.</summary>
    public string Hours { get; init; } = "h";

    /// <summary>The unit of days.</summary>
    public string Days { get; init; } = "days";

    /// <summary>The first instant.</summary>
    public string AtTheStart { get; init; } = "at the start";

    /// <summary>Before a time that has passed.</summary>
    public string After { get; init; } = "after";

    /// <summary>The column of figures' names.</summary>
    public string Figure { get; init; } = "Figure";

    /// <summary>The column of components.</summary>
    public string Component { get; init; } = "Component";

    /// <summary>The column of what a model says.</summary>
    public string Predicted { get; init; } = "predicted";

    /// <summary>The column of ranges.</summary>
    public string Between { get; init; } = "between";

    /// <summary>The column of what was measured.</summary>
    public string Measured { get; init; } = "measured";

    /// <summary>The column of measured less predicted.</summary>
    public string Miss { get; init; } = "miss";

    /// <summary>The column of what a figure means.</summary>
    public string WhatItMeans { get; init; } = "what it means";

    /// <summary>Over the workings of a table.</summary>
    public string HowWorkedOut { get; init; } = "How these were worked out";

    /// <summary>Before what a figure lacks.</summary>
    public string NotWithout { get; init; } = "Not known without";

    /// <summary>Before what lies outside the range in which an equation was tested.</summary>
    public string OutsideTested { get; init; } = "Outside what was tested:";

    /// <summary>The name of the table of predicted and measured figures.</summary>
    public string PredictedAndMeasured { get; init; } = "Predicted beside measured";

    /// <summary>Where nothing was measured.</summary>
    public string NothingMeasured { get; init; } = "Nothing was measured that a model predicts: yield, Brix, pH, density, a core temperature or a water activity in measured.csv would stand here.";

    /// <summary>A make of a trial, before its number.</summary>
    public string Make { get; init; } = "make";

    /// <summary>The column that says on which side of the predicted range a measured figure lies.</summary>
    public string InRange { get; init; } = "in the range";

    /// <summary>A measured figure in the predicted range.</summary>
    public string Inside { get; init; } = "inside";

    /// <summary>A measured figure over the predicted range.</summary>
    public string Above { get; init; } = "above it";

    /// <summary>A measured figure under the predicted range.</summary>
    public string Below { get; init; } = "below it";

    /// <summary>How many measured figures lie in their predicted ranges.</summary>
    public Template InsideOfAll { get; init; } = new("{inside} of {all} measured figures lie in the predicted range. The miss is measured less predicted.");

    /// <summary>What was checked against windows.</summary>
    public WindowWords Windows { get; init; } = new();

    /// <summary>Water between layers over days.</summary>
    public WaterWords Water { get; init; } = new();

    /// <summary>Heat, freezing and fat.</summary>
    public HeatWords Heat { get; init; } = new();
}

/// <summary>The words around water between layers, in one language.</summary>
public sealed record WaterWords
{
    /// <summary>The upward axis.</summary>
    public string WaterActivity { get; init; } = "water activity";

    /// <summary>The title of the picture over days.</summary>
    public string OverDays { get; init; } = "Each layer’s mean water activity over days";

    /// <summary>The title of the picture through the stack.</summary>
    public string ThroughStack { get; init; } = "Water activity through the stack, from below";

    /// <summary>The layers by their numbers; <c>{layers}</c> are they.</summary>
    public Template FromBelow { get; init; } = new("From below: {layers}.");

    /// <summary>The axis of days.</summary>
    public string DaysAxis { get; init; } = "days since it was put together";

    /// <summary>The axis of heights.</summary>
    public string HeightAxis { get; init; } = "mm from below";

    /// <summary>A limit above which a layer goes soft; <c>{layer}</c> is its name.</summary>
    public Template SoftAbove { get; init; } = new("going soft: {layer}");

    /// <summary>A limit below which a layer goes dry; <c>{layer}</c> is its name.</summary>
    public Template DryBelow { get; init; } = new("going dry: {layer}");

    /// <summary>A layer that passes its limit.</summary>
    public Template PassesOn { get; init; } = new("{layer} passes its limit of {limit} after {days}.");

    /// <summary>A layer past its limit from the start; <c>{water}</c> is what it holds, <c>{least}</c> what it holds at its limit.</summary>
    public Template PastAtStart { get; init; } = new("{layer} starts at {activity}, past its limit of {limit} already: by its isotherm the limit stands at {least} of water, and it has {water}.");

    /// <summary>In place of days for a layer past its limit from the start.</summary>
    public string FromTheStart { get; init; } = "past it from the start";

    /// <summary>A layer that does not pass its limit in the time looked at.</summary>
    public Template Keeps { get; init; } = new("{layer} stays on the right side of its limit of {limit} for the {days} that were looked at.");

    /// <summary>Where all layers come to in the end.</summary>
    public Template InTheEnd { get; init; } = new("Left alone, all layers would come to {activity}.");

    /// <summary>Isotherms that are illustrative; <c>{layers}</c> are their layers.</summary>
    public Template Illustrative { get; init; } = new("The isotherms of {layers} are illustrative, not measured: trust the order of the layers and the effect of a change, not the day.");

    /// <summary>The table of what a film buys; <c>{layer}</c> is the layer that is to keep.</summary>
    public Template FilmBuys { get; init; } = new("What a thicker film buys: days until {layer} passes its limit");

    /// <summary>The column of thicknesses.</summary>
    public string Film { get; init; } = "Film";

    /// <summary>The column of days.</summary>
    public string KeepsFor { get; init; } = "keeps for";

    /// <summary>The column of the range of days.</summary>
    public string MayBe { get; init; } = "may be";

    /// <summary>Before a number of days that was not reached.</summary>
    public string MoreThan { get; init; } = "more than";

    /// <summary>A film of no thickness.</summary>
    public string NoFilm { get; init; } = "none";
}

/// <summary>The words around heat, freezing and fat, in one language.</summary>
public sealed record HeatWords
{
    /// <summary>The upward axis of temperatures.</summary>
    public string Temperature { get; init; } = "temperature, °C";

    /// <summary>The axis of minutes.</summary>
    public string MinutesAxis { get; init; } = "minutes";

    /// <summary>The axis of hours.</summary>
    public string HoursAxis { get; init; } = "hours";

    /// <summary>The warmest place.</summary>
    public string Warmest { get; init; } = "warmest";

    /// <summary>The coldest place.</summary>
    public string Coldest { get; init; } = "coldest";

    /// <summary>The mean.</summary>
    public string Mean { get; init; } = "mean";

    /// <summary>The title of the picture of a log.</summary>
    public string LogTitle { get; init; } = "Temperature";

    /// <summary>The curve of a log.</summary>
    public string Log { get; init; } = "log";

    /// <summary>The title of the picture of the effect so far; <c>{reference}</c> is the reference temperature.</summary>
    public Template EffectTitle { get; init; } = new("Effect so far, as minutes at {reference}");

    /// <summary>The axis of the effect.</summary>
    public string Effect { get; init; } = "minutes at the reference";

    /// <summary>The curve of the effect.</summary>
    public string SoFar { get; init; } = "so far";

    /// <summary>The chosen target.</summary>
    public Template Target { get; init; } = new("target {minutes}");

    /// <summary>A target that was met; <c>{when}</c> says when.</summary>
    public Template Met { get; init; } = new("The target is met {when}; in all the log has the effect of {effect} at {reference}.");

    /// <summary>A target that was not met.</summary>
    public Template NotMet { get; init; } = new("The target is not met: the log has the effect of {effect} at {reference}, and {target} were chosen.");

    /// <summary>What a lethality is not.</summary>
    public string Deferral { get; init; } = "A figure here is no proof: sugar, fat and little water protect microbes, and what counts is the local code and who is licensed to judge by it.";

    /// <summary>The title of the ice curve.</summary>
    public string IceTitle { get; init; } = "Ice against temperature";

    /// <summary>The upward axis of the ice curve.</summary>
    public string Ice { get; init; } = "ice, % of the water";

    /// <summary>The title of the curve of solid fat.</summary>
    public string SolidFatTitle { get; init; } = "Solid fat against temperature";

    /// <summary>The upward axis of solid fat.</summary>
    public string SolidFat { get; init; } = "solid fat, % of the fat";

    /// <summary>The freezing point of a component; <c>{component}</c> is its name.</summary>
    public Template FreezesAt { get; init; } = new("{component} begins to freeze at {temperature}.");

    /// <summary>Components whose freezing cannot be worked out; <c>{components}</c> are they, with what is lacking.</summary>
    public Template NoIce { get; init; } = new("Not known: {components}.");

    /// <summary>A fat that no curve speaks for.</summary>
    public Template NoFat { get; init; } = new("Without fat, or with fat of an unknown kind: {components}.");
}

/// <summary>The words around windows, in one language.</summary>
public sealed record WindowWords
{
    /// <summary>What a window is not.</summary>
    public string Usual { get; init; } = "A window says what usually works. It is no promise that something is safe, keeps or is liked.";

    /// <summary>The column of windows.</summary>
    public string Window { get; init; } = "usually";

    /// <summary>The column of what was found.</summary>
    public string Found { get; init; } = "here";

    /// <summary>The column of where a figure lies beside its window.</summary>
    public string Beside { get; init; } = "beside it";

    /// <summary>The column of what is seen and what to try.</summary>
    public string SeenAndTry { get; init; } = "what is seen, what to try";

    /// <summary>A figure under its window; <c>{by}</c> is by how much.</summary>
    public Template TooLow { get; init; } = new("{by} too little");

    /// <summary>A figure over its window; <c>{by}</c> is by how much.</summary>
    public Template TooHigh { get; init; } = new("{by} too much");

    /// <summary>A figure inside its window.</summary>
    public string Inside { get; init; } = "inside";

    /// <summary>Before what to try.</summary>
    public string Try { get; init; } = "Try:";

    /// <summary>A verdict that what is not known could change.</summary>
    public string NotSure { get; init; } = "What is not known of it could change this.";

    /// <summary>The unit of a difference between per cents.</summary>
    public string Points { get; init; } = "points";

    /// <summary>How many figures of a component lie inside; <c>{inside}</c> of <c>{known}</c>.</summary>
    public Template InsideOf { get; init; } = new("{inside} of {known} figures inside");

    /// <summary>How many could not be worked out.</summary>
    public Plural NotKnown { get; init; } = new("one not known", "{count} not known");

    /// <summary>A component without windows; <c>{component}</c> is its name, <c>{reason}</c> why.</summary>
    public Template NoVerdict { get; init; } = new("{component}: {reason}.");
}
