namespace Tamis.Production;

/// <summary>An order cannot be worked out from what the sheets say so far: a mass that nobody knows, a component of which nothing is left, equipment too small for one make, a plan that contradicts itself. The message says to a cook what is missing.</summary>
/// <param name="message">What is missing.</param>
public sealed class OrderException(string message) : InvalidOperationException(message);
