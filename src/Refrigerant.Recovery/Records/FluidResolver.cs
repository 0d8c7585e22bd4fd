using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Records;

/// <summary>Finds the fluid of a designation in a document, for fluids that another property engine computes.</summary>
/// <param name="designation">The designation as it stands in the document.</param>
/// <returns>The fluid; null for the one of the catalogue.</returns>
public delegate Fluid? FluidResolver(string designation);
