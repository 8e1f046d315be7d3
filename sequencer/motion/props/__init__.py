"""Props: shapes, tension, torque and reach."""
