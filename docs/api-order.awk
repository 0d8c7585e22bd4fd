# Puts the namespaces of api/toc.yml in the order in which a reader meets them; what is not listed follows.
BEGIN {
  split("Fluids Gauges Equipment Cylinders Planning Processes Residuals Rules Estimation Records Findings Simulation Flow Numerics", order)
}
/^- uid: / { current = $3; sub(/^.*\./, "", current); seen[++count] = current }
/^items:/ { head = head $0 "\n"; next }
/^[A-Za-z]/ && current != "" { tail = tail $0 "\n"; next }
current == "" { head = head $0 "\n"; next }
{ body[current] = body[current] $0 "\n" }
END {
  printf "%s", head
  for (i = 1; i in order; i++) { printf "%s", body[order[i]]; delete body[order[i]] }
  for (i = 1; i <= count; i++) { printf "%s", body[seen[i]]; delete body[seen[i]] }
  printf "%s", tail
}
